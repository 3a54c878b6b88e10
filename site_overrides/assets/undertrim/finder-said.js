/* What the finder says of what was typed: how many, which question tells two apart, what a number says, and why there is nothing. */

import { light, ofTime, search, withoutTimes } from "./finder-match.js";
import { telling } from "./finder-telling.js";
import { asksCheck, checkDigit, checks, modelYears } from "./finder-vin.js";
import { list, say } from "./words.js";

/** @import { FinderRow, VinTable } from "published" */
/** @import { Hit } from "./finder-match.js" */
/** @import { Query } from "./finder-query.js" */

const MOST_NAMED = 5;

function span(row, months) {
  if (months && row[7]) return say("finder/built", { from: row[7], to: row[8] });
  return row[3] === row[4] ? String(row[3]) : say("finder/years", { first: String(row[3]), last: String(row[4]) });
}

/**
 * What is recorded where no vehicle is of the time asked for: "No Finch of 2020; recorded: 2014 to 2018".
 * @param {FinderRow[]} rows
 * @param {Query["tokens"][number]["times"]} times
 */
export function recorded(rows, times) {
  const months = times.some((time) => time.months), models = new Map();
  rows.forEach((row) => {
    const name = row[1] + " " + row[2];
    models.set(name, (models.get(name) || []).concat([row]));
  });
  const names = [...models.keys()].sort();
  const spans = names.map((name) => models.get(name).sort((a, b) => a[3] - b[3]).map((row) => span(row, months)).join(", "));
  if (names.length === 1) return say("finder/no-such-time", { name: names[0], time: times[0].words, recorded: spans[0] });
  const shown = names.slice(0, MOST_NAMED).map((name, at) => name + " " + spans[at]);
  if (names.length > MOST_NAMED) shown.push(say("finder/and-more", { count: names.length - MOST_NAMED }));
  return say("finder/none-of-time", { time: times[0].words, recorded: list(shown, "semicolon") });
}

/**
 * A time that no record covers is not a slip of the finger: what there is without it is said.
 * @param {Query} asked
 * @param {VinTable} table
 * @param {number} latest
 * @param {boolean} more whether there are vehicles that are not here
 */
export function whyNone(asked, table, latest, more) {
  if (asked.misread) return "";
  if (asked.number && !asked.tokens.length) return say("finder/no-pattern");
  const timed = asked.tokens.filter((token) => token.times.length), named = asked.tokens.filter((token) => !token.times.length);
  if (more && !named.length) return say("finder/name-wanted");
  const without = withoutTimes(asked, table, latest).map((hit) => hit.row);
  if (without.length) {
    const failing = timed.find((token) => !without.some((row) => ofTime(token.times, row)));
    return recorded(without, (failing || timed[0]).times);
  }
  const odd = named.filter((token) => /^'?\d{1,4}[./–—-]\d/.test(token.text));
  const rest = named.filter((token) => !odd.includes(token));
  if (odd.length && search({ ...asked, tokens: rest }, table, latest).length) return say("finder/not-a-time", { typed: odd.map((token) => token.text).join(" ") });
  return say("finder/none");
}

/**
 * What a number says by itself.
 * @param {Query} asked
 * @param {Hit[]} hits
 * @param {VinTable} table
 * @param {number} latest
 * @returns {string[]}
 */
export function ofNumber(asked, hits, table, latest) {
  if (asked.misread) return [say("finder/vin-letters")];
  if (!asked.number) return [];
  const row = hits.length === 1 ? hits[0].row : null, every = modelYears(asked.number, table, row && light(row, table), latest);
  const own = every.filter((year) => row && row[3] <= year && year <= row[4]), years = (own.length ? own : every).map(String);
  const said = [years.length ? say("finder/vin-year", { years: list(years, "or") }) : say("finder/vin-no-year")];
  if (!checks(asked.number, table)) said.push(say(asksCheck(asked.number, table) ? "finder/vin-wrong" : "finder/vin-unchecked", { digit: checkDigit(asked.number, table) }));
  return [...said, say("finder/vin-stays")];
}

/**
 * How many vehicles, and what to look at next; with what each answers where two remain.
 * @param {Hit[]} hits
 * @param {number} shown
 * @returns {{ words: string, answers: Map<FinderRow, string> }}
 */
export function counted(hits, shown) {
  if (hits.length > shown) return { words: say("finder/first-shown", { count: hits.length, shown }), answers: new Map() };
  if (hits.length === 2) {
    const { ask, answers } = telling(hits[0].row, hits[1].row);
    return { words: say("finder/two", { ask }), answers };
  }
  return { words: hits.length === 1 ? say("finder/is-this") : say("finder/found", { count: hits.length }), answers: new Map() };
}
