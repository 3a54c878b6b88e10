/* Which vehicles somebody means, the best first, with what the words also say: what to do, and which car (`derive/finding/matching.py`).
   A word is held against each different name once, not against each vehicle, so that a phone answers in a large collection too. */

import { BEGINS, fits, fold, forms, oneSlip } from "./finder-names.js";
import { count } from "./finder-times.js";
import { answers, modelYears } from "./finder-vin.js";
import { words } from "./finder-words.js";

/** @import { FinderRow, VinTable } from "published" */
/** @import { Query, Token } from "./finder-query.js" */
/** @typedef {{ row: FinderRow, names: number[], jobs: number[], years: number[], months: number[], place: number }} Item */
/** @typedef {{ row: FinderRow, score: number, jobs: string[], car: Record<string, string>, place: number }} Hit */

const TIME = 1.5, CAR = 1.2, JOB = 0.8, JOB_SLIP = 0.4, OF_PATTERN = 4, OF_YEAR = 1, LEAST_BEGUN = 3, LEAST_JOB_SLIP = 5;
const ONLY = "*"; // the car says so by itself: there is no other in the record

/* Different texts by number, each with what is asked of it worked out once. */
class Texts {
  constructor(made) {
    this.made = made;
    this.numbers = new Map();
    this.held = [];
  }

  number(key, ...given) {
    if (!this.numbers.has(key)) {
      this.numbers.set(key, this.held.length);
      this.held.push(this.made(...given));
    }
    return this.numbers.get(key);
  }
}

const called = new Texts((name) => [...new Set(forms(name))]);
const worked = new Texts((name, kind) => ({ kind, words: fold(name).split(/[\s,()-]+/).filter(Boolean) }));

/** @type {Item[]} */
let items = [];

/* @returns {Item} */
function item(row) {
  const names = [row[1], row[2], ...row[6], ...(row[5] ? [row[5]] : [])].map((name) => called.number(name, name));
  const jobs = row[12].map(([, name, kind]) => worked.number(kind + " " + name, name, kind));
  const years = [row[3] * 12, (row[4] + 1) * 12];
  return { row, names, jobs, years, months: row[7] ? [count(row[7]), count(row[8])] : years, place: 0 };
}

function less(one, other) { return one < other ? -1 : one > other ? 1 : 0; }

/**
 * More vehicles to find.
 * @param {FinderRow[]} rows
 */
export function add(rows) {
  items = items.concat(rows.map(item));
  items.sort((a, b) => less(a.row[1], b.row[1]) || less(a.row[2], b.row[2]) || b.row[4] - a.row[4] || less(a.row[0], b.row[0]));
  items.forEach((one, place) => { one.place = place; });
  kept.clear();
}

/** How many there are to find. */
export function size() { return items.length; }

/** @type {Map<string, { names: Float64Array, jobs: Float64Array }>} what a word was worth, until others come */
const kept = new Map();
const MOST_KEPT = 64;

/** @param {Token} token */
function worth(token) {
  const found = kept.get(token.text);
  if (found && found.names.length === called.held.length && found.jobs.length === worked.held.length) return found;
  const texts = token.joined === token.text ? [token.text] : [token.text, token.joined];
  const made = {
    names: Float64Array.from(called.held, (every) => Math.max(...every.map((form) => Math.max(...texts.map((text) => fits(text, form)))))),
    jobs: Float64Array.from(worked.held, (one) => jobWorth(token, one))
  };
  if (kept.size > MOST_KEPT) kept.clear();
  kept.set(token.text, made);
  return made;
}

function jobWorth(token, { kind, words: named }) {
  const begun = token.text.length >= LEAST_BEGUN && named.some((word) => word.startsWith(token.text));
  if (begun || token.meanings.some(([sort, value]) => sort === "kind" && value === kind)) return JOB;
  if (token.text.length < LEAST_JOB_SLIP) return 0;
  const kinds = [...words().phrases].filter(([, meanings]) => meanings.some(([sort, value]) => sort === "kind" && value === kind)).map(([phrase]) => phrase);
  return [...named, ...kinds].some((word) => oneSlip(token.text, word)) ? JOB_SLIP : 0;
}

/**
 * Whether a vehicle is of one of the times: by model years for years, by months of build for months.
 * @param {Token["times"]} times
 * @param {Pick<Item, "years" | "months">} one
 */
function holds(times, one) {
  return times.some((time) => {
    const known = time.months ? one.months : one.years;
    return time.start < known[1] && known[0] < time.end;
  });
}

/* The choices of a car that a word names; ONLY where there is nothing to choose. */
function ofCar(token, row) {
  return token.meanings.flatMap(([sort, value]) => {
    if (sort === "side" && row[10].includes(value)) return [["drive-side", row[10].length > 1 ? value : ONLY]];
    return sort === "body" && row[9].includes(value) ? [["body", row[9].length > 1 ? value : ONLY]] : [];
  });
}

function best(values, places) { return places.reduce((most, place) => Math.max(most, values[place]), 0); }

/* One vehicle; null where a word fits nothing of it. */
function hit(asked, worths, one, table, latest) {
  let score = 0;
  const jobs = [], car = {};
  for (let at = 0; at < worths.length; at += 1) {
    const token = asked.tokens[at], name = best(worths[at].names, one.names), job = best(worths[at].jobs, one.jobs);
    const time = token.times.length && holds(token.times, one) ? TIME : 0, said = token.meanings.length ? ofCar(token, one.row) : [];
    const most = Math.max(name, time, said.length ? CAR : 0, job);
    if (!most) return null;
    score += most;
    said.filter(([, value]) => value !== ONLY).forEach(([variant, value]) => { car[variant] = value; });
    if (job && name < BEGINS && !time && !said.length) jobs.push(at);
  }
  const told = asked.number ? byNumber(asked.number, one.row, table, latest) : { score: 0, car: {} };
  return { row: one.row, score: score + told.score, jobs: chosen(jobs, worths, one), car: { ...car, ...told.car }, place: one.place };
}

/* The jobs that most of the words name, then those that most of the others do; in the order of the record. */
function chosen(tokens, worths, one) {
  const found = new Set();
  for (let left = tokens; left.length;) {
    const named = one.jobs.map((job) => left.filter((at) => worths[at].jobs[job]));
    const most = Math.max(...named.map((of) => of.length));
    const picked = named.map((of, place) => ({ of, place })).filter(({ of }) => of.length === most);
    picked.forEach(({ place }) => found.add(one.row[12][place][0]));
    left = left.filter((at) => !picked.some(({ of }) => of.includes(at)));
  }
  return one.row[12].map(([id]) => id).filter((id) => found.has(id));
}

function byNumber(number, row, table, latest) {
  const told = answers(number, row[13]), years = modelYears(number, table, light(row, table), latest);
  const score = (told ? OF_PATTERN : 0) + (years.some((year) => row[3] <= year && year <= row[4]) ? OF_YEAR : 0);
  return { score, car: Object.fromEntries(Object.entries(told || {}).filter(([, choices]) => choices.length === 1).map(([name, choices]) => [name, choices[0]])) };
}

/**
 * Whether a vehicle is surely one for which position 7 tells the span of years; null: nobody knows.
 * @param {FinderRow} row
 * @param {VinTable} table
 */
export function light(row, table) { return row[9].length && row[9].every((body) => table.year.passenger_cars.includes(body)) ? true : null; }

/**
 * The vehicles that are meant, the best first.
 * @param {Query} asked
 * @param {VinTable} table
 * @param {number} latest the last model year there can be
 * @returns {Hit[]}
 */
export function search(asked, table, latest) {
  if (!asked.tokens.length && !asked.number) return [];
  const worths = asked.tokens.map(worth), hits = [];
  items.forEach((one) => {
    const made = hit(asked, worths, one, table, latest);
    if (made) hits.push(made);
  });
  const ofPattern = asked.number ? hits.filter((one) => answers(asked.number, one.row[13])) : [];
  if (asked.number && !ofPattern.length && !asked.tokens.length) return [];
  return (ofPattern.length ? ofPattern : hits).sort((a, b) => b.score - a.score || a.place - b.place);
}

/**
 * Those that the times alone keep out: all that fit the other words.
 * @param {Query} asked
 * @param {VinTable} table
 * @param {number} latest
 */
export function withoutTimes(asked, table, latest) {
  const rest = asked.tokens.filter((token) => !token.times.length);
  return rest.length < asked.tokens.length ? search({ ...asked, tokens: rest }, table, latest) : [];
}

/**
 * Whether a vehicle is of one of the times.
 * @param {Token["times"]} times
 * @param {FinderRow} row
 */
export function ofTime(times, row) { return holds(times, item(row)); }
