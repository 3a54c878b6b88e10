/* What the box finds besides vehicles: on a vehicle's pages what is in that car, and everywhere gear, the handbook, words and rules. Few enough to be looked through one by one. */

import { fits, fold, forms, SLIP } from "./finder-names.js";

/** @import { FinderEntry } from "published" */
/** @typedef {{ entry: FinderEntry, from: string, title: string[], text: string[], raw: string, place: number }} Held */
/** @typedef {{ entry: FinderEntry, from: string, score: number, place: number }} Found */

/** @type {Held[]} */
let held = [];
const EXACT = 1.5, MEANT = 0.9, LEAST = 2;

function words(text) { return fold(text).split(/[^\p{L}\p{N}]+/u).filter(Boolean); }

/**
 * @param {string} from which file of the index has them
 * @param {FinderEntry[]} entries
 */
export function addMore(from, entries) {
  const more = entries.map((entry) => ({ entry, from, title: [...new Set(forms(entry[1]).concat(words(entry[1])))], text: words(entry[2] + " " + (entry[4] || "")), raw: fold(entry[1] + " " + entry[2] + " " + (entry[4] || "")), place: 0 }));
  const told = new Set(more.map((one) => one.entry[3]));
  held = held.filter((one) => from !== "text" || one.from !== "book" || !told.has(one.entry[3])).concat(more); // the same, with its text
  held.forEach((one, place) => { one.place = place; });
}

/* How well a word fits an entry: what it is called before what is said of it. */
function worth(token, one) {
  let best = 0;
  for (const form of one.title) best = Math.max(best, fits(token, form));
  if (best > SLIP) return best;
  return one.text.some((word) => word.startsWith(token)) ? MEANT : best;
}

/**
 * What fits all words that were typed, the best first. What is typed with a stroke stays together and in its order: "blue/white" is another wire than "white/blue".
 * @param {string} typed
 * @returns {Found[]}
 */
export function searchMore(typed) {
  const text = fold(typed).trim(), parts = text.split(/[\s,;]+/).filter(Boolean), tokens = parts.flatMap(words);
  const whole = parts.filter((part) => part.includes("/")), exact = parts.filter((part) => /[^\p{L}\p{N}/]/u.test(part));
  if (!tokens.length || text.length < LEAST) return [];
  const found = held.filter((one) => whole.every((part) => one.raw.includes(part))).flatMap((one) => {
    const worths = tokens.map((token) => worth(token, one));
    if (!worths.every(Boolean)) return [];
    const score = worths.reduce((sum, value) => sum + value, 0) / tokens.length + exact.filter((part) => one.raw.includes(part)).length * EXACT;
    return [{ entry: one.entry, from: one.from, score, place: one.place }];
  });
  return found.sort((a, b) => b.score - a.score || a.place - b.place);
}
