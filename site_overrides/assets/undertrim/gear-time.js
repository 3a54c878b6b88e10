/* Shows how long the chosen gear takes to fit, beside the time that the steps take. */

import { chosen, known } from "./chosen.js";
import { byId, make } from "./elements.js";
import { askedOf } from "./gear-asked.js";
import { say } from "./words.js";

/** @import { Shelf } from "published" */

const spot = byId("ut-fitting");

/**
 * The pieces of the stock that the visit has at some openings, where they go in at all.
 * @param {Shelf} shelf
 * @param {string[]} openings
 */
function fitted(shelf, openings) {
  const visit = chosen(), count = (opening) => known.targets.filter((target) => target.opening === opening && visit.jobs.includes(target.id)).length;
  const found = openings.map((opening) => ({ opening, gear: shelf.stock.find((item) => item.id === (visit.gear[opening] || {}).gear && item.kind === known.words.takes[opening]) }));
  return found.filter(({ gear }) => gear).map((one) => ({ ...one, asked: askedOf(one.opening, shelf), count: count(one.opening) }));
}

/**
 * @param {Shelf | null} shelf
 * @param {string[]} openings
 */
export function showFitting(shelf, openings) {
  const found = shelf ? window.undertrimFit.fittings(fitted(shelf, openings)) : [];
  spot.hidden = !found.length;
  spot.replaceChildren(...found.map(({ cars, time }) => make("p", {}, cars ? say("plan/fitting-in", { cars, time }) : say("plan/fitting", { time }))));
}
