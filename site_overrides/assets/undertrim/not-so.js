/* "Not so on my car": beside what a page tells of a thing, and at its end for all the rest. The form, and the facts at their addresses, are fetched
   when somebody wants them. */

import { chosenCar, known, page } from "./chosen.js";
import { all, make } from "./elements.js";
import { unpacked } from "./packed.js";
import { load } from "./shelf.js";
import { say } from "./words.js";

/** @import { Claimable } from "published" */

/* Where the record holds the things whose elements on a page begin so. */
const HOLDS = { opening: "openings", plug: "connectors", run: "runs", ladder: "ladders" };
const OF_STEPS = { remove: "parts", refit: "parts", move: "parts", prepare: "preps", restore: "preps", wait: "preps", install: "openings", test: "openings" };

/** @type {Claimable} */
let facts;
window.undertrimFacts = (packed) => { facts = unpacked(packed); };

async function open(about, said) {
  said.textContent = say("page/keep-working");
  try {
    await Promise.all([load("assets/undertrim/claim-form.js"), load(`vehicles/${known.address}.facts.js`)]);
    said.textContent = "";
    window.undertrimClaim({ facts, about, car: chosenCar() });
  } catch (error) { said.textContent = say("not-so/not-here"); }
}

function asking(about, words) {
  const said = make("span", { role: "status" });
  return make("p", { class: "ut-not-so" }, make("button", { type: "button", class: "ut-button", click: () => { open(about, said); } }, words), " ", said);
}

/* The address of what a step is about; empty where the record holds no such thing by itself. */
function ofStep(step) {
  const [kind, id] = step.split(":");
  return kind in OF_STEPS && id !== "usual" ? `${OF_STEPS[kind]}/${id.replace(/@.*$/, "")}` : "";
}

all(Object.keys(HOLDS).map((kind) => `section[id^="${kind}-"]`).join(", "), page).forEach((thing) => {
  const [kind] = thing.id.split("-");
  thing.append(asking(`${HOLDS[kind]}/${thing.id.slice(kind.length + 1)}`, say("not-so/not-so")));
});
document.addEventListener("ut-step", (event) => {
  const area = /** @type {CustomEvent} */ (event).detail;
  area.append(asking(ofStep(area.dataset.step || ""), say("not-so/not-so")));
});
page.append(asking("", say("not-so/something-not-so")));
