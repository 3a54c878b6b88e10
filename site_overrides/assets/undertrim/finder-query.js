/* What was typed, word by word, as it is understood (`derive/finding/matching.py`). */

import { fold } from "./finder-names.js";
import { read, split } from "./finder-times.js";
import { inPieces, isVin, misread, normal } from "./finder-vin.js";
import { words } from "./finder-words.js";

/** @import { VinTable } from "published" */
/** @import { Span } from "./finder-times.js" */
/** @import { Meaning } from "./finder-words.js" */
/** @typedef {{ text: string, joined: string, times: Span[], meanings: Meaning[] }} Token */
/** @typedef {{ tokens: Token[], number: string, misread: string }} Query */

const MOST_WORDS = 4, LEAST_BEGUN = 3;

/**
 * @param {string} text
 * @param {VinTable} table
 * @returns {Query}
 */
export function query(text, table) {
  const whole = normal(text), like = (one) => isVin(one, table) || misread(one, table);
  if (inPieces(text, table) || like(text.trim().toUpperCase())) return { tokens: [], ...number(whole, table) };
  const typed = split(fold(text)), numbers = typed.filter((word) => like(word.toUpperCase()));
  const rest = typed.filter((word) => !numbers.includes(word) && !words().idle.includes(word));
  return { tokens: tokens(rest), ...number(numbers.length ? numbers[0].toUpperCase() : "", table) };
}

function number(found, table) { return found && isVin(found, table) ? { number: found, misread: "" } : { number: "", misread: found }; }

/* The longest phrases first; what is in none stands alone. */
function tokens(typed) {
  const found = [];
  for (let at = 0; at < typed.length;) {
    let size = Math.min(MOST_WORDS, typed.length - at);
    while (size > 1 && !words().phrases.has(phrase(typed, at, size).replace(/-/g, " "))) size -= 1;
    found.push(token(phrase(typed, at, size)));
    at += size;
  }
  return found;
}

function phrase(typed, at, size) { return typed.slice(at, at + size).join(" "); }

/** @returns {Token} */
function token(text) {
  return { text, joined: text.replace(/[^a-z0-9]+/g, "") || text, times: read(text), meanings: words().phrases.get(text.replace(/-/g, " ")) || begun(text) };
}

/* What the phrases mean that a word is the beginning of; not the steering side, for "left" is also where a speaker is. */
function begun(text) {
  if (text.length < LEAST_BEGUN) return [];
  const found = [...words().phrases].filter(([one]) => one.startsWith(text)).flatMap(([, meanings]) => meanings);
  return found.filter(([sort, value], at) => sort !== "side" && found.findIndex((one) => one[0] === sort && one[1] === value) === at);
}
