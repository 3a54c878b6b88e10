/* Numbers with their uncertainty, and comparisons of what is needed with what is there, as `derive/fit/margins.py` has them.
   Lengths are { value, step, text, shown, least } in mm, "unknown" or "none", or null where nothing is recorded. */

import { both, round } from "./lengths.js";
import { list, say } from "./words.js";

/** @import { FitNumber, Given, Quantity } from "published" */

export const DIGITS = 9;

const BEYOND = 1e6;

/**
 * @param {string} label
 * @param {number | null} value
 * @param {number} step
 * @param {string} text
 * @param {boolean} [usual]
 * @returns {FitNumber}
 */
export function number(label, value, step, text, usual) {
  return { label, value, step, text, default: !!usual, less: 0, more: 0, lacking: false };
}

export function known(label, value, step, usual) { return number(label, value, step || 0, both(value), usual); }

/**
 * @param {Given | undefined} value
 * @returns {value is Quantity}
 */
export function isLength(value) { return value !== null && typeof value === "object"; }

/**
 * @param {string} label
 * @param {Given | undefined} value
 */
export function typed(label, value) {
  if (isLength(value)) {
    const found = number(label, value.value, value.step, value.shown);
    return value.least ? changed(found, { more: BEYOND, lacking: true }) : found;
  }
  return number(label, null, 0, value ? say(`facts/${value}`) : notRecorded());
}

export function notRecorded() { return say("facts/not-recorded"); }

export function total(numbers) { return numbers.reduce((sum, one) => sum + (one.value || 0), 0); }

export function remaining(have, need) { return round(have - need, DIGITS); }

export function spread(numbers) { return hypot(numbers.map((one) => one.step)); }

export function hypot(values) { return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0)); }

export function made(name, title, verdict, words, more) {
  const base = { name, title, verdict, words, need: null, have: null, margin: null, uncertainty: null, numbers: [], missing: [], mend: "", unit: "mm" };
  return Object.assign(base, more || {});
}

export function named(one) { return lacks(one.label, one.text); }

/* What is missing, and how. */
export function lacks(what, how) { return say("fit/missing", { what, how }); }

/* Several that may hold commas themselves, joined by a word before each. */
export function each(items) { return list(items, "each"); }

/* What a check found. */
export function foundBy(title, found) { return say("fit/check", { title, found }); }

export function untold(name, title, missing, numbers) {
  return made(name, title, "unknown", say("fit/untold", { title, missing: each(missing) }), { numbers: numbers || [], missing });
}

function judge(margin, uncertainty) {
  if (Math.abs(margin) < uncertainty) return "marginal";
  return margin >= 0 ? "fits" : "fails";
}

/**
 * Compares what is there with what is needed, in mm.
 * @param {string} name
 * @param {string} title
 * @param {FitNumber[]} have
 * @param {FitNumber[]} need
 * @param {string} [mend]
 */
export function compare(name, title, have, need, mend) {
  const numbers = have.concat(need);
  if (numbers.some((one) => one.value === null)) {
    const missing = shifts(have, "less").concat(shifts(need, "more"))
      .filter((pair) => pair[0].value === null || (pair[0].lacking && pair[1])).map((pair) => named(pair[0]));
    return untold(name, title, missing, numbers);
  }
  const there = total(have), wanted = total(need);
  const base = { need: wanted, have: there, margin: remaining(there, wanted), uncertainty: round(spread(numbers), DIGITS), numbers, mend: mend || "" };
  return judged(made(name, title, "fits", "", base), have, need);
}

/* A fact that is lacking decides nothing where even its worst case leaves room: marginal. Where it may decide, nothing can be told. */
function judged(check, have, need) {
  const margin = check.margin, uncertainty = check.uncertainty;
  const taken = shifts(have, "less").concat(shifts(need, "more")), given = shifts(have, "more").concat(shifts(need, "less"));
  const said = changed(check, { words: foundBy(check.title, amount(margin, uncertainty)) });
  if (judge(remaining(margin, -sum(given)), uncertainty) === "fails") return changed(said, { verdict: "fails" });
  if (judge(remaining(margin, sum(taken)), uncertainty) === "fits") return capped(said, lacking(taken).length ? say("fit/measure", { what: each(lacking(taken)) }) : "");
  const doubtful = lacking(taken).length ? lacking(taken) : lacking(given);
  if (doubtful.length) return untold(check.name, check.title, doubtful, check.numbers);
  return changed(check, { verdict: "marginal", words: foundBy(check.title, close(check, margin, uncertainty)) });
}

/* By how much each number may still move a margin one way. */
function shifts(numbers, way) { return numbers.map((one) => [one, one[way]]); }

function sum(moved) { return moved.reduce((all, pair) => all + pair[1], 0); }

function lacking(moved) {
  return moved.filter((pair) => pair[0].lacking && pair[1]).map((pair) => named(pair[0]));
}

function close(check, margin, uncertainty) {
  const usual = check.numbers.filter((one) => one.less || one.more);
  if (Math.abs(margin) < uncertainty || !usual.length) return say("fit/within", { apart: apart(margin), uncertainty: both(uncertainty) });
  const said = usual.map((one) => say("fit/usual", { what: one.label, low: both(one.value - one.less), high: both(one.value + one.more) }));
  return say("fit/usual-decides", { amount: amount(margin, uncertainty), usual: each(said) });
}

function apart(margin) { return margin >= 0 ? say("fit/to-spare", { length: both(margin) }) : say("fit/short", { length: both(-margin) }); }

/* What is said of a length, with its uncertainty behind it. */
export function uncertain(said, uncertainty) { return uncertainty ? say("fit/uncertain", { said, uncertainty: both(uncertainty) }) : said; }

export function amount(margin, uncertainty) { return uncertain(apart(margin), uncertainty); }

export function changed(check, more) { return { ...check, ...more }; }

export function capped(check, reason) {
  if (!reason || (check.verdict !== "fits" && check.verdict !== "marginal")) return check;
  return changed(check, { verdict: "marginal", words: say("fit/capped", { words: check.words, reason }) });
}

export function gap(check) {
  if (check.margin === null) return null;
  return check.margin + check.numbers.reduce((sum, one) => sum + (one.default ? one.value || 0 : 0), 0);
}

/* A usual clearance with another length in its place. */
/**
 * @param {FitNumber} one
 * @param {Quantity} length
 */
export function replaced(one, length) { return number(one.label, length.value, 0, length.shown, true); }
