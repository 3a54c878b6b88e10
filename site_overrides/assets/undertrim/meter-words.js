/* Readings and functions in words. */

import { list, number, say } from "./words.js";

/** @import { MeterTable } from "published" */

function figures(value) {
  return number(value.toFixed(2).replace(/\.?0+$/, "").replace("-", "−"));
}

export function measured(value, unit) {
  if (unit === "ohm" && Math.abs(value) >= 1e6) return figures(value / 1e6) + " Mohm";
  if (unit === "ohm" && Math.abs(value) >= 1e3) return figures(value / 1e3) + " kohm";
  return figures(value) + " " + unit;
}

export function ranged(band, unit) {
  if (band.high === null || band.high === Infinity) return say("meter/and-up", { low: measured(band.low, unit) });
  return say("meter/range", { low: measured(band.low, unit), high: measured(band.high, unit) });
}

/** @param {MeterTable} table */
export function names(table, found) {
  const said = {};
  found.forEach((name) => { said[name] = table.function[name].words; });
  Object.keys(table.together).forEach((group) => {
    const whole = Object.keys(table.function).filter((name) => table.function[name].group === group);
    if (whole.every((name) => name in said)) {
      whole.forEach((name) => { said[name] = table.together[group]; });
    }
  });
  return list(Array.from(new Set(found.map((name) => said[name]))), "comma");
}
