/* What a page asks about gear at one of its openings: the opening as it is reckoned, what the visit says, and the shelf that this leaves. */

import { chosen, chosenCar, known } from "./chosen.js";
import { byId } from "./elements.js";
import { unpacked } from "./packed.js";
import { write } from "./visit-text.js";

/** @import { Forms, Shelf, ShelfGear } from "published" */

const holder = byId("ut-fit-data");
/** @type {Forms} */
export const forms = holder ? unpacked(JSON.parse(holder.textContent)) : {};

/* The kinds of gear that are wanted to answer for some openings: what goes in, and what may stand between. */
export function kindsFor(openings) {
  return [...new Set(openings.flatMap((opening) => [known.words.takes[opening], ...(known.words.between[opening] || [])]))];
}

/**
 * The gear of the visit, by opening, as far as it is on the shelf.
 * @param {ShelfGear[]} stock
 * @returns {Record<string, ShelfGear>}
 */
export function fitted(stock) {
  const found = Object.keys(chosen().gear).map((opening) => [opening, stock.find((item) => item.id === chosen().gear[opening].gear)]);
  return Object.fromEntries(found.filter(([, item]) => item));
}

/* The stock that is left where somebody chose what stands between. */
function left(stock, roles) {
  return stock.filter((item) => !(item.kind in roles) || roles[item.kind].split(",").includes(item.id));
}

/**
 * @param {string} opening
 * @param {Shelf} shelf
 */
export function askedOf(opening, shelf) {
  return {
    place: forms[opening], vehicle: known.address, written: known.words.written[opening], variants: known.words.variants, labels: known.variants,
    car: chosenCar(), stock: left(shelf.stock, chosen().gear[opening] || {}), fitted: fitted(shelf.stock), usual: shelf.usual
  };
}

/**
 * A command that answers for the visit, as it is typed.
 * @param {string} verb
 */
export function command(verb) {
  const text = write(chosen(), known), vehicle = known.address.split("/")[1];
  return `undertrim ${verb} ${text ? `"${vehicle}?${text}"` : vehicle}`;
}
