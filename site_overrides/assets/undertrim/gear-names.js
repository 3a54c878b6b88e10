/* The gear of a visit by its name: the address has ids alone, and what they are called stands on the shelf. It is asked for where a visit has gear. */

import { known } from "./chosen.js";
import { ask } from "./shelf.js";

/** @import { Visit } from "./visit-text.js" */

/** @type {Map<string, string>} by id and kind */
const names = new Map();
/** @type {Set<string>} the kinds that were asked for, whether they came or not */
const asked = new Set();

/* Each piece with its kind; that nothing of a kind stands between is no piece. */
function pieces(opening, chosen) {
  return Object.entries(chosen).flatMap(([role, ids]) => ids.split(",").filter((id) => id !== "none").map((id) => ({ id, kind: role === "gear" ? known.words.takes[opening] : role })));
}

/**
 * What is chosen for an opening, by name; by its id until the name has come, or where there is no such gear.
 * @param {Visit} visit
 * @param {string} opening
 */
export function gearNames(visit, opening) {
  return pieces(opening, visit.gear[opening] || {}).map(({ id, kind }) => names.get(`${kind} ${id}`) || id);
}

/**
 * Asks for the names that a visit wants and that have not come; resolves to whether some came.
 * @param {Visit} visit
 * @returns {Promise<boolean>}
 */
export function fetchNames(visit) {
  const kinds = [...new Set(Object.keys(visit.gear).flatMap((opening) => pieces(opening, visit.gear[opening]).map((one) => one.kind)))].filter((kind) => !asked.has(kind));
  kinds.forEach((kind) => asked.add(kind));
  return kinds.length ? ask(kinds).then(learn, () => false) : Promise.resolve(false); // where none come the ids stay
}

function learn(shelf) {
  shelf.stock.forEach((item) => names.set(`${item.kind} ${item.id}`, item.name));
  return true;
}
