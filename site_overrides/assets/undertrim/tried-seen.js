/* What people saw who tried gear in an opening, beside its verdict. */

import { say } from "./words.js";

/** @import { ShelfGear } from "published" */

/* The verdicts that a look says the opposite of, as derive/fit/tried.py has them. */
const AGAINST = { no: ["fits", "fits-with"], yes: ["does-not-fit"] };

/**
 * What was seen there, each beside a verdict of this kind.
 * @param {ShelfGear} gear
 * @param {string} vehicle
 * @param {string} opening
 * @param {string} kind
 */
export function seen(gear, vehicle, opening, kind) {
  const there = gear.tried.filter((one) => one.vehicle === vehicle && one.opening === opening);
  return there.map((one) => say(AGAINST[one.went_in].includes(kind) ? "tried/against" : "tried/seen", { said: one.said }));
}
