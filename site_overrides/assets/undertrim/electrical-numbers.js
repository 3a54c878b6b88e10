/* Numbers of power and sound as people read them, usual values and refusals: the same as `derive/electrical`. Tables come with the page.
   Every calculator takes one object and gives { headline, numbers, notes, ... } or throws Refused. */

import { number as marked, say, wayOut } from "./words.js";

/** @import { Calculators } from "published" */

export const SLACK = 1e-9; // relative; takes up the rounding of floats, nothing else
const KEPT = 12; // digits that two machines agree on; rounding begins from these
const DIGITS = 4;
export const CIRCULAR_MIL = Math.PI / 4 * 0.0254 * 0.0254; // mm2
/** The tables that are reckoned with; filled by `use`. */
export const tables = /** @type {Calculators} */ ({});

/**
 * Takes the tables, before anything is reckoned.
 * @param {Calculators} given
 */
export function use(given) { Object.assign(tables, given); }

/* A question without an answer: why, by its code and values, with the way out. */
export class Refused extends Error {
  constructor(code, values) {
    super(say(code, values));
    this.hint = wayOut(code, values);
  }
}

export function missing(value) { return value === null || value === undefined; }

export function shown(value) {
  const parts = Math.abs(value).toExponential(KEPT - 1).split("e");
  const power = Number(parts[1]);
  const kept = Number(parts[0].replace(".", ""));
  const digits = Math.max(DIGITS, Math.min(power + 1, KEPT));
  const rounded = Math.floor(kept / Math.pow(10, KEPT - digits) + 0.5);
  const text = pointed(String(rounded), digits - 1 - power);
  return (value < 0 && rounded ? "-" : "") + text;
}

/* Digits with the point so many places from the right, without trailing zeros. */
function pointed(digits, places) {
  if (places <= 0) return digits === "0" ? "0" : digits + "0".repeat(-places);
  const padded = digits.padStart(places + 1, "0");
  const cut = padded.length - places;
  return (padded.slice(0, cut) + "." + padded.slice(cut)).replace(/\.?0+$/, "");
}

function printed(value, row) {
  const digits = shown(value * row.scale + (row.offset || 0));
  if (row.word) return say(`amounts/${row.word}`, { number: marked(digits), count: digits === "1" ? 1 : 2 });
  return say("amounts/plain", { number: marked(digits), symbol: row.symbol });
}

export function said(value, unit) {
  const row = tables.print[unit].find((one) => !("below" in one) || Math.abs(value) < one.below);
  return row.other ? say("amounts/both", { amount: printed(value, row), other: printed(value, row.other) }) : printed(value, row);
}

export function number(label, value, unit, origin) {
  return { label, value, unit, text: said(value, unit), origin: origin || "computed" };
}

export function usual(name) { return tables.defaults.usual[name]; }

export function given(bound, value, label, origin) {
  const row = tables.defaults.bounds[bound];
  const name = label || row.label;
  const hint = say("electrical/within", { least: said(row.least, row.unit), most: said(row.most, row.unit) });
  if (typeof value !== "number" || !isFinite(value)) throw new Refused("electrical/not-a-number", { name, hint });
  if (value < row.least || value > row.most) throw new Refused("electrical/cannot-be", { name, value: said(value, row.unit), hint });
  return number(name, value, row.unit, origin || "given");
}

export function orElse(bound, value, other, label) {
  return missing(value) ? given(bound, other, label, "usual") : given(bound, value, label);
}

export function orUsual(bound, value, name, label) { return orElse(bound, value, usual(name), label); }
