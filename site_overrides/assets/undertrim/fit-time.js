/* How long the gear of a visit takes to fit, as far as it says, as `derive/fit/fitting.py` and `publish/facts/fitting.py` have it. */

import { matches } from "./concerns.js";
import { carsInWords, kindsBy, telling } from "./fit-cars.js";
import { fitIn } from "./fit-place.js";
import { minutes } from "./times.js";
import { list, say } from "./words.js";

/** @import { ShelfGear } from "published" */
/** @import { Asked } from "./fit-place.js" */
/** @typedef {{ opening: string, asked: Asked, gear: ShelfGear, count: number }} Fitted a piece that was chosen for an opening, and at how many sides it goes in */

/**
 * The time in each group of cars in which it is the same; `cars` is empty where there is one group alone.
 * @param {Fitted[]} fitted in the order of the visit
 */
export function fittings(fitted) {
  if (!fitted.length) return [];
  const [{ asked }] = fitted, used = new Set(fitted.flatMap((one) => [...telling(one.asked.place, one.asked.stock, asked.vehicle, one.asked.written)]));
  const every = kindsBy(used, asked.variants, asked.car), groups = new Map();
  every.forEach((car) => {
    const time = said(pieces(fitted, car));
    groups.set(time, [...(groups.get(time) || []), car]);
  });
  return [...groups].filter(([time]) => time).map(([time, cars]) => ({ time, cars: groups.size > 1 ? carsInWords(cars, every, asked.labels) : "" }));
}

/* All that goes into one car, each with how often. */
function pieces(fitted, car) {
  const present = fitted.filter(({ asked }) => matches(asked.place.clauses, car) && !asked.place.closed.some((clauses) => matches(clauses, car)));
  const beside = Object.fromEntries(present.map((one) => [one.opening, one.gear]));
  return present.flatMap(({ asked, gear, count }) => [gear, ...between(fitIn({ ...asked, fitted: beside }, gear, car), asked)].map((item) => ({ item, count })));
}

function between(fit, { stock }) {
  return fit.parts.map((name) => stock.find((item) => item.name === name)).filter(Boolean);
}

function said(every) {
  const time = every.reduce((sum, { item, count }) => sum + count * (item.fitting || 0), 0);
  const silent = list([...new Set(every.filter(({ item }) => item.fitting === null).map(({ item }) => item.name))], "comma");
  if (!time) return silent && say("times/fitting-unsaid", { gear: silent });
  return silent ? say("times/fitting-some", { time: minutes(time), gear: silent }) : say("times/fitting", { time: minutes(time) });
}
