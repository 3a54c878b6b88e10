/* Gear of the shelf at an opening of a vehicle: the verdict in each kind of car, and all of a kind ranked, as `derive/fit/answers.py` has them. */

import { use as useTables } from "./electrical-numbers.js";
import { matches } from "./concerns.js";
import { amplifier, connected } from "./fit-amplifier.js";
import { carsInWords, kinds, suiting } from "./fit-cars.js";
import { joint } from "./fit-joint.js";
import { driven, load } from "./fit-load.js";
import { receiver } from "./fit-receiver.js";
import { speaker } from "./fit-speaker.js";
import { tweeter } from "./fit-tweeter.js";
import { use as useUnits } from "./lengths.js";
import { less, rank, stopped, together } from "./fit-verdict.js";
import { list, say } from "./words.js";

/** @import { Form, Shelf, ShelfGear, Usual } from "published" */
/** @typedef {Record<string, string>} Car */
/**
 * An opening with all that an answer depends on: what is said of the car, the shelf that is offered there, and what else is fitted in the same visit, by opening.
 * @typedef {{ place: Form, vehicle: string, written: string, variants: Record<string, string[]>, labels: Record<string, Record<string, string>>, car: Car,
 *   stock: ShelfGear[], fitted: Record<string, ShelfGear>, usual: Usual }} Asked
 */

/* How gear of each kind goes in by size, and what may go between. */
/** @type {Record<Form["kind"], { fit: (gear: any, opening: any, between: any, usual: any, toGet: string) => any, between: string }>} */
const SIZED = { amplifier: { fit: amplifier, between: "" }, receiver: { fit: receiver, between: "kit" }, speaker: { fit: speaker, between: "spacer" }, tweeter: { fit: tweeter, between: "crossover" } };

/**
 * Takes what is reckoned with, before anything is.
 * @param {Pick<Shelf, "units" | "electrical">} shelf
 */
export function use(shelf) {
  useUnits(shelf.units);
  useTables(shelf.electrical);
}

/**
 * What may go between gear and the opening of one car, of what suits it.
 * @param {Form} place
 * @param {ShelfGear[]} shelf
 */
export function between(place, shelf) {
  return shelf.filter((item) => item.kind === SIZED[place.kind].between && !(item.alters.length && place.uncut));
}

/**
 * The answer in one kind of car.
 * @param {Asked} asked
 * @param {ShelfGear} gear
 * @param {Car} car
 * @param {Map<string, any>} sizes what was worked out by size alone
 */
export function fitIn(asked, gear, car, sizes = new Map()) {
  const { place } = asked, shelf = suiting(asked.stock, asked.vehicle, asked.written, car), parts = between(place, shelf);
  const key = [gear, ...parts].map((item) => item.id).join(" ");
  if (!sizes.has(key)) sizes.set(key, SIZED[place.kind].fit(gear.gear, place.opening, parts, asked.usual, gear.to_get));
  const found = whole(asked, sizes.get(key), gear, car, shelf);
  return { ...found, alters: asked.stock.filter((item) => item.alters.length && found.parts.includes(item.name)).map(altering) };
}

/* With all that it is joined to. */
function whole(asked, found, gear, car, suiting) {
  const { place, fitted, stock, usual } = asked;
  if (place.joining) return joined(found, gear, place.joining, car, suiting);
  if (place.feeding) return connected(found, { item: gear, opening: place.opening, feeding: place.feeding, car, fitted, suiting, stock, usual });
  return loaded(found, gear, place, car, fitted);
}

/* That what goes between alters the car. */
function altering(item) { return say("fit/altering", { name: item.name, how: list(item.alters.map((one) => say(`altering/${one}`)), "comma") }); }

/* What would join it is of no use where it does not go in. */
function joined(found, gear, joining, car, shelf) {
  if (found.kind === "does-not-fit") return found;
  const more = joint(gear, joining, car, shelf);
  return stopped(together(found, more.checks, more.parts, more.to_get), more.stops);
}

function loaded(found, gear, place, car, fitted) {
  const one = place.loads.find((each) => matches(each.clauses, car));
  return one ? together(found, driven(one, fitted).map((each) => load(gear.gear, each))) : found;
}

/**
 * The kinds of car that have the opening, and in which gear may be offered there.
 * @param {Asked} asked
 */
export function open(asked) {
  const { place } = asked, every = kinds(place, asked.stock, asked.vehicle, asked.written, asked.variants, asked.car);
  const there = every.filter((car) => matches(place.clauses, car));
  return { there, free: there.filter((car) => !place.closed.some((clauses) => matches(clauses, car))) };
}

/**
 * What one piece of gear comes to in all kinds of car that are left open: the worst, and in which cars it is so where they differ.
 * @param {Asked} asked
 * @param {ShelfGear} gear
 * @param {Car[]} cars
 * @param {Map<string, any>} sizes
 */
export function verdict(asked, gear, cars, sizes = new Map()) {
  const each = cars.map((car) => ({ car, fit: fitIn(asked, gear, car, sizes) }));
  const worst = each.reduce((found, one) => less(rank(found.fit, ""), rank(one.fit, "")) ? one : found);
  const having = each.filter((one) => one.fit.headline === worst.fit.headline).map((one) => one.car);
  return { gear, fit: worst.fit, cars: carsInWords(having, cars, asked.labels) };
}

/**
 * All gear that an opening takes, the best first.
 * @param {Asked} asked
 */
export function ranked(asked) {
  const taken = asked.stock.filter((item) => item.kind === asked.place.gear), { free } = open(asked), sizes = new Map();
  return free.length ? taken.map((gear) => verdict(asked, gear, free, sizes)).sort((one, other) => less(rank(one.fit, one.gear.name), rank(other.fit, other.gear.name)) ? -1 : 1) : [];
}
