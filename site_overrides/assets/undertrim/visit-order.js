/* What hides what, for a visit: the map is in the document while somebody looks at it, with what the visit leaves in place told apart. With scripts off it is there as it is. */

import { chosenCar, chosenJobs } from "./chosen.js";
import { matches } from "./concerns.js";
import { all } from "./elements.js";
import { data } from "./visit-steps.js";

const box = /** @type {HTMLDetailsElement | null} */ (document.getElementById("ut-order"));
const drawn = box && box.querySelector(".ut-order");
/** @type {string[]} the steps of the visit by number */
let steps = [];

/** @param {HTMLElement} part */
function ofTheVisit(part) {
  const ids = new Set([...steps.map((number) => data.steps[number].id), ...chosenJobs()]);
  return !part.dataset.steps || part.dataset.steps.split(" ").some((id) => ids.has(id));
}

function draw() {
  all(".ut-order", box).forEach((map) => { map.remove(); });
  if (!box.open) return;
  box.append(drawn.cloneNode(true));
  all(".ut-order > g", box).forEach((part) => {
    if (!matches(JSON.parse(part.dataset.clauses || "{}"), chosenCar())) part.remove();
    else part.classList.toggle("ut-off", !ofTheVisit(part));
  });
}

if (box) {
  draw();
  box.addEventListener("toggle", draw);
}

/**
 * To be called with the steps of the visit whenever they change.
 * @param {string[]} numbers
 */
export function showOrder(numbers) {
  steps = numbers;
  if (box && box.open) draw();
}
