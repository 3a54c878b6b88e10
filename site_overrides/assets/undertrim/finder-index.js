/* The index of the finder, which comes as scripts that call undertrimFinder(): all vehicles, or the names in each piece and then the pieces that are
   wanted; and apart from these what else the site has. */

import { forms, oneSlip } from "./finder-names.js";
import { add } from "./finder-match.js";
import { addMore } from "./finder-more.js";
import { BASE } from "./keeper-asked.js";

/** @import { Finder, FinderMore, VinTable } from "published" */
/** @import { Query } from "./finder-query.js" */


const MOST_ASKED = 6, LEAST = 2, LEAST_SLIP = 4;

/** @type {VinTable} */
let table;
/** @type {[string, string[]][]} a piece with the forms of what its vehicles are called */
let pieces = [];
/** @type {Record<string, string[]>} */
let makers = {};
/** @type {Record<string, Promise<void>>} what is on its way or here */
const asked = {};
const coming = new Set();

/** The table by which numbers are read; nothing before the index is there. */
export function vinTable() { return table; }

/** Whether there are more vehicles than are here. */
export function split() { return pieces.length > 0; }

/* Sorted names from one text: each has a digit for the letters that it shares with the one before. */
function names(text) {
  let before = "";
  return text.split("|").map((one) => {
    before = before.slice(0, parseInt(one[0], 36)) + one.slice(1);
    return before;
  });
}

window.undertrimFinder = (/** @type {string} */ name, /** @type {Finder & FinderMore} */ data) => {
  if (data.vin) table = data.vin;
  if (data.makers) makers = data.makers;
  if (data.pieces) pieces = Object.entries(data.pieces).map(([piece, text]) => [piece, [...new Set(names(text).flatMap(forms))]]);
  if (data.rows) add(data.rows);
  if (data.entries) addMore(name, data.entries);
};

/**
 * Loads a file of the index once; one that does not come can be asked for again.
 * @param {string} path from the top of the site, without its ending
 * @returns {Promise<void>}
 */
export function load(path) {
  if (!asked[path]) {
    if (/\/(?:\d+|start)$/.test(path)) coming.add(path);
    asked[path] = new Promise((resolve, reject) => {
      const script = document.createElement("script");
      script.src = `${BASE}${path}.js`;
      script.onload = () => { coming.delete(path); resolve(); };
      script.onerror = () => { coming.delete(path); delete asked[path]; script.remove(); reject(new Error(path)); };
      document.head.append(script);
    });
  }
  return asked[path];
}

let many = false;

/** Whether what was typed last may be found in more pieces than are asked for. */
export function tooMany() { return many; }

/** Whether vehicles are on their way. */
export function looking() { return coming.size > 0; }

/* In which pieces all words of a kind of fit occur. */
function near(words, fit) { return pieces.filter(([, every]) => words.every((word) => every.some((form) => fit(word, form)))).map(([piece]) => piece); }

/**
 * The pieces in which what is typed may be found and which are not here: those in which every word that is nothing else begins a name, or has one slip.
 * @param {Query} query
 * @returns {string[]}
 */
export function wanted(query) {
  const words = query.tokens.filter((token) => !token.times.length && !token.meanings.length && token.text.length >= LEAST).map((token) => token.text);
  const byName = words.length ? near(words, (word, form) => form.startsWith(word)) : [];
  const slipped = words.length && !byName.length ? near(words, (word, form) => word.length >= LEAST_SLIP && (form.includes(word) || oneSlip(word, form))) : [];
  const byNumber = query.number ? makers[query.number.slice(0, 3)] || [] : [];
  const every = [...byNumber, ...byName, ...slipped];
  many = every.length > MOST_ASKED;
  return every.slice(0, MOST_ASKED).map((piece) => `finder/${piece}`).filter((path) => !asked[path]);
}
