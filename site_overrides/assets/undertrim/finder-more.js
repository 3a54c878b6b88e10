/* What the box finds besides vehicles: on a vehicle's pages what is in that car, and everywhere gear, the handbook, words and rules. Few enough to be looked through one by one. */

import { fits, fold, forms, SLIP } from "./finder-names.js";

/** @import { FinderEntry } from "published" */
/** @typedef {{ entry: FinderEntry, from: string, title: string[], text: string[], raw: string, place: number }} Held */
/** @typedef {{ entry: FinderEntry, from: string, score: number, place: number }} Found */

/** @type {Held[]} */
let held = [];
const SAID = 1.5, MEANT = 0.9;

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
 * What fits all words that were typed, the best first. Colours and numbers with a stroke or hyphen keep their order: "blue/white" is not "white/blue".
 * @param {string} typed
 * @returns {Found[]}
 */
export function searchMore(typed) {
  const text = fold(typed).trim(), parts = text.split(/[\s,;]+/).filter(Boolean), tokens = parts.flatMap((part) => words(part));
  const whole = parts.filter((part) => /[^\p{L}\p{N}]/u.test(part));
  if (!tokens.length || text.length < 2) return [];
  const found = held.flatMap((one) => {
    let score = 0;
    for (const token of tokens) {
      const value = worth(token, one);
      if (!value) return [];
      score += value;
    }
    const exact = whole.filter((part) => one.raw.includes(part)).length;
    return [{ entry: one.entry, from: one.from, score: score / tokens.length + exact * SAID, exact, place: one.place }];
  });
  const most = Math.max(0, ...found.map((one) => one.exact));
  return found.filter((one) => one.exact === most).sort((a, b) => b.score - a.score || a.place - b.place);
}
