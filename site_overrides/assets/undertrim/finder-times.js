/* What is typed of a time: years, months of build and ranges of them (`derive/finding/times.py`). Months are counted from year 0; every span is half-open. */

import { words } from "./finder-words.js";
import { say } from "./words.js";

/** @typedef {{ start: number, end: number, months: boolean, words: string }} Span */

const RANGE = "..", CENTURY = 60, LEAST_MONTH = 3;
const NUMBER = "'?\\d{1,4}(?:[-/.]\\d{1,4})?";

function year(text) {
  if (/^(19|20)\d\d$/.test(text)) return Number(text);
  if (!/^'?\d\d$/.test(text)) return null;
  const two = Number(text.slice(-2));
  return two > CENTURY ? 1900 + two : 2000 + two;
}

function month(text) { return /^(0?[1-9]|1[0-2])$/.test(text) ? Number(text) : null; }

function years(first, last) { return { start: first * 12, end: (last + 1) * 12, months: false, words: first === last ? String(first) : say("finder/years", { first: String(first), last: String(last) }) }; }

function oneMonth(of, which) {
  const at = of * 12 + which - 1;
  return { start: at, end: at + 1, months: true, words: of + "-" + String(which).padStart(2, "0") };
}

function joined(one, other) { return { start: one.start, end: other.end, months: one.months || other.months, words: say("finder/years", { first: one.words, last: other.words }) }; }

/**
 * The times that one word may mean: "16" one, "05-16" two (May 2016, and 2005 to 2016), "finch" none.
 * @param {string} word
 * @returns {Span[]}
 */
export function read(word) {
  const at = word.indexOf(RANGE);
  if (at >= 0) {
    const one = read(word.slice(0, at))[0], other = read(word.slice(at + RANGE.length))[0];
    return one && other && one.start < other.end ? [joined(one, other)] : [];
  }
  const alone = year(word);
  if (alone !== null) return [years(alone, alone)];
  const parts = word.split(/[-/.–—]/);
  return parts.length === 2 ? two(parts[0], parts[1]) : [];
}

function two(one, other) {
  const first = year(one), last = year(other), found = [];
  const monthFirst = month(one) && other.length === 4; // "04/2016" is April 2016 and not from 2004 on
  if (first !== null && last !== null && first <= last && !monthFirst) found.push(years(first, last));
  if (first !== null && month(other) && !(found.length && other.length === 4)) found.push(oneMonth(first, month(other)));
  if (last !== null && month(one)) found.push(oneMonth(last, month(one)));
  return found;
}

/**
 * Words apart; a month and its year, or two times, stay together: "05 / 2016", "march 2016", "2014 to 2018".
 * @param {string} text
 */
export function split(text) {
  const between = words().between.map((one) => one.replace(/[^\w\s]/g, "\\$&")).join("|");
  const ranges = new RegExp(`(^|[\\s,;])(${NUMBER})\\s*(?:[-–—]|${between})\\s*(${NUMBER})(?![^\\s,;])`, "g");
  const ranged = withNumbers(text).replace(ranges, asRange);
  return ranged.replace(/(^|[\s,;])('?\d{1,4})\s*[-–—/]\s*('?\d{1,4})(?![^\s,;])/g, asOne).split(/[\s,;/]+/).filter(Boolean);
}

/* Two times with a word or a dash between; two plain numbers with a dash may also be a month and its year, and stay for `read`. */
function asRange(all, before, one, other) {
  const word = /[-/.]/.test(one + other) ? one.replace("/", "-") + RANGE + other.replace("/", "-") : one + "-" + other;
  return read(word).length ? before + word : all;
}

function asOne(all, before, one, other) { return read(one + "-" + other).length ? before + one + "-" + other : all; }

/* Months by name become numbers, where a year stands beside them: "march 2016" is 2016-03. */
function withNumbers(text) {
  const pieces = text.split(/([\s,;]+)/);
  for (let at = 0; at < pieces.length; at += 2) {
    const number = named(pieces[at]);
    const beside = number ? [at + 2, at - 2].find((place) => place >= 0 && place < pieces.length && year(pieces[place]) !== null) : undefined;
    if (beside !== undefined) {
      const of = year(pieces[beside]);
      pieces[Math.max(at, beside)] = "";
      pieces[Math.min(at, beside)] = of + "-" + String(number).padStart(2, "0");
    }
  }
  return pieces.join("");
}

function named(text) {
  const plain = text.replace(/\.+$/, "");
  return plain.length < LEAST_MONTH ? 0 : words().months.findIndex((name) => name.startsWith(plain)) + 1;
}

/** @param {string} text a month as records have it */
export function count(text) {
  const parts = text.split("-").map(Number);
  return parts[0] * 12 + parts[1] - 1;
}
