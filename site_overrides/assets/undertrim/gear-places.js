/* Into which openings of a vehicle a piece of gear goes, as `derive/fit/everywhere.py` has it: the verdicts, one for all cars in which what decides is the same. */

import { carsInWords, kinds } from "./fit-cars.js";
import { fitIn, open } from "./fit-place.js";
import { verdictWords } from "./fit-verdict.js";
import { seen } from "./tried-seen.js";

/** @import { PlaceVehicle, Shelf, ShelfGear } from "published" */
/** @typedef {{ vehicle: string, title: string, demo: boolean, opening: string, written: string, name: string, cars: string, verdict: string, words: string, headline: string, seen: string[] }} Found */

const RANKED = ["fits", "fits-with", "marginal", "unknown", "stop", "does-not-fit"];

/**
 * @param {PlaceVehicle} vehicle
 * @param {ShelfGear} gear
 * @param {Shelf} shelf
 * @returns {Found[]}
 */
export function inVehicle(vehicle, gear, shelf) {
  return vehicle.openings.flatMap((opening) => {
    const asked = { place: opening.form, vehicle: vehicle.address, written: opening.written, variants: vehicle.variants, labels: vehicle.labels, car: {}, stock: shelf.stock, fitted: {}, usual: shelf.usual };
    const { free } = open(asked), every = kinds(opening.form, shelf.stock, vehicle.address, opening.written, vehicle.variants, {}), sizes = new Map();
    const alike = new Map();
    free.forEach((car) => {
      const fit = fitIn(asked, gear, car, sizes), key = fit.kind + " " + fit.headline;
      alike.set(key, { fit, cars: [...(alike.get(key) || { cars: [] }).cars, car] });
    });
    return [...alike.values()].map(({ fit, cars }) => ({
      vehicle: vehicle.address, title: vehicle.title, demo: vehicle.demo, opening: opening.id, written: opening.written, name: opening.name,
      cars: cars.length === every.length ? "" : carsInWords(cars, every, vehicle.labels), verdict: fit.kind, words: verdictWords(fit), headline: fit.headline, seen: seen(gear, vehicle.address, opening.written, fit.kind)
    }));
  });
}

/**
 * The best first and else by vehicle; what fits alike stays as it is.
 * @param {Found[]} found
 */
export function inOrder(found) {
  return found.slice().sort((a, b) => RANKED.indexOf(a.verdict) - RANKED.indexOf(b.verdict) || (a.vehicle < b.vehicle ? -1 : a.vehicle > b.vehicle ? 1 : 0));
}
