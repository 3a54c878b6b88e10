/* What is chosen of a visit, the same on all of a vehicle's pages; and whether everything is shown in spite of it. */

import { byId } from "./elements.js";
import { read } from "./visit-text.js";

/** @import { Choosing } from "published" */
/** @import { Visit } from "./visit-text.js" */

export const page = document.querySelector(".ut-vehicle");

/** @type {Choosing} */
export const known = JSON.parse(byId("ut-choosing").textContent);

/** @type {Visit} */
let visit = read("", known);
let everything = false;

export function chosen() { return visit; }
export function everythingShown() { return everything; }

/* The openings worked at and the car that facts are shown for: all of them where everything is shown. */
export function chosenJobs() { return everything ? [] : visit.jobs; }
export function chosenCar() { return everything ? {} : visit.car; }

/**
 * Take a visit as the one that is chosen, and say so to all that shows it.
 * @param {Visit} made
 */
export function choose(made, showEverything = false) {
  visit = made;
  everything = showEverything;
  page.dispatchEvent(new CustomEvent("ut-visit", { bubbles: true }));
}
