/* The kinds of car that an answer may differ between, and what of the shelf suits one, as `derive/cars.py`, `derive/fit/stock.py` and `derive/fit/duty_groups.py` have them. */

import { matches } from "./concerns.js";
import { list } from "./words.js";

/** @import { Form, ShelfGear } from "published" */
/** @typedef {Record<string, string>} Car */

/**
 * What of the shelf is made for an opening of a car, and what is made for no car in particular.
 * @param {ShelfGear[]} stock
 * @param {string} vehicle
 * @param {string} written the id that the opening is written under
 * @param {Car} car
 */
export function suiting(stock, vehicle, written, car) {
  return stock.filter((item) => !item.suits.length || item.suits.some((place) => place.vehicle === vehicle && place.opening === written && matches(place.clauses, car)));
}

/**
 * On what of the car an answer at an opening may depend.
 * @param {Form} place
 * @param {ShelfGear[]} stock
 */
export function telling(place, stock, vehicle, written) {
  const joining = place.joining ? [...place.joining.functions, ...place.joining.sound, ...place.joining.duties, ...place.joining.duties.flatMap((duty) => duty.stops)] : [];
  const fed = place.feeding ? [...place.feeding.sound, ...place.feeding.beside, ...place.feeding.parts] : [];
  const suits = stock.flatMap((item) => item.suits).filter((one) => one.vehicle === vehicle && one.opening === written);
  return new Set([place, ...place.loads, ...joining, ...fed, ...suits].map((one) => one.clauses).concat(place.closed).flatMap(Object.keys));
}

/**
 * Every kind of car that agrees with what is said of it.
 * @param {Form} place
 * @param {ShelfGear[]} stock
 * @param {string} vehicle
 * @param {string} written
 * @param {Record<string, string[]>} variants
 * @param {Car} said
 * @returns {Car[]}
 */
export function kinds(place, stock, vehicle, written, variants, said) {
  return kindsBy(telling(place, stock, vehicle, written), variants, said);
}

/**
 * @param {Set<string>} used the variants that tell them apart
 * @param {Record<string, string[]>} variants
 * @param {Car} said
 * @returns {Car[]}
 */
export function kindsBy(used, variants, said) {
  return Object.keys(variants).filter((name) => used.has(name)).reduce((found, name) => found.flatMap((car) =>
    variants[name].filter((choice) => !(name in said) || said[name] === choice).map((choice) => ({ ...car, [name]: choice }))), [{}]);
}

/* Some of all kinds of car as conditions: one where that can be said, else one for each. */
function conditions(having, every) {
  const told = (cars) => Object.fromEntries(Object.keys(every[0]).map((name) => [name, [...new Set(cars.map((car) => car[name]))]]));
  const chosen = told(having), all = told(every);
  if (Object.values(chosen).reduce((product, one) => product * one.length, 1) !== having.length) return having.map((car) => Object.fromEntries(Object.keys(car).map((name) => [name, [car[name]]])));
  return [Object.fromEntries(Object.keys(chosen).filter((name) => chosen[name].length !== all[name].length).map((name) => [name, chosen[name]]))];
}

/**
 * Some of all kinds of car in words; empty for all of them.
 * @param {Car[]} having
 * @param {Car[]} every
 * @param {Record<string, Record<string, string>>} labels
 */
export function carsInWords(having, every, labels) {
  return list(conditions(having, every).map((clauses) => list(Object.keys(clauses).map((name) => list(clauses[name].map((choice) => (labels[name] || {})[choice] || choice), "either")), "comma")), "semicolon");
}
