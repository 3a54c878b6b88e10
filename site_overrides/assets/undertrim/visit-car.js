/* The car from above: touching a mark chooses what the box of the list beside it chooses, and a step's place is shown small. */

import { matches } from "./concerns.js";
import { all, fields, target } from "./elements.js";
import { list, say } from "./words.js";

/** @import { PagePlace } from "published" */

const picture = /** @type {SVGElement | null} */ (document.querySelector(".ut-car"));
const marks = picture ? all("[data-pick]", picture) : [];

/**
 * The box that a mark of the picture stands for.
 * @param {HTMLElement} mark
 */
function boxOf(mark) {
  return fields("input[name=job]").find((box) => box.value === mark.dataset.pick);
}

if (picture) {
  picture.addEventListener("click", (event) => {
    const mark = /** @type {HTMLElement | null} */ (target(event).closest("[data-pick]"));
    if (!mark) return;
    event.preventDefault();
    boxOf(mark).click();
  });
}

/** Marks what is chosen, as the boxes say it. */
export function showPicked() {
  marks.forEach((mark) => {
    mark.classList.toggle("ut-picked", boxOf(mark).checked);
  });
  if (picture) picture.classList.toggle("ut-any", marks.some((mark) => mark.classList.contains("ut-picked")));
}

/**
 * A small picture of the car with a step's places lit; nothing where none is known.
 * @param {PagePlace[]} at
 * @param {Record<string, string>} names what the places are called
 * @param {Record<string, string>} car
 */
export function placeShown(at, names, car) {
  const lit = at.filter((one) => one.place in names && matches(one.clauses, car));
  if (!lit.length) return "";
  const small = /** @type {HTMLTemplateElement} */ (document.getElementById("ut-here")).content.firstElementChild.cloneNode(true);
  const drawn = /** @type {SVGElement} */ (small), place = drawn.lastElementChild;
  lit.forEach((one) => {
    const use = /** @type {Element} */ (place.cloneNode());
    use.setAttribute("href", `#ut-at-${one.place}`);
    drawn.append(use);
  });
  place.remove();
  drawn.setAttribute("aria-label", say("drawings/place-of-step", { place: list(lit.map((one) => names[one.place]), "or") }));
  return drawn;
}
