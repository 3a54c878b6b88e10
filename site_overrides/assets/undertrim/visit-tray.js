/* What is out of the car at a moment of a visit, and whether the steps to come take all of it back. */

import { matches } from "./concerns.js";

/** @import { Count, Step } from "./page-data.js" */
/** @import { Kept } from "./visits.js" */
/** @typedef {{ sort: string, now: number, goes: number, over: number, bagged: number }} Row of a sort: how many lie in the tray, how many the steps to come put in,
 *  how many are then left over (below nothing: missing), and how many lie in the bag with the old parts */

/**
 * @param {Step} step
 * @param {Record<string, string>} car
 * @returns {Count[]}
 */
function counts(step, car) {
  return step.lines.filter((line) => matches(line.clauses, car)).flatMap((line) => line.counts);
}

/* Whether a step takes fasteners out or puts some in. */
export function moves(step, car) { return counts(step, car).some((count) => count.out || count.back || count.moved); }

/**
 * The tray before the step at a place, by sort in the order in which they came out. Steps that are done count wherever they stand.
 * @param {Step[]} steps
 * @param {(step: Step) => boolean} done
 * @param {number} at
 * @param {Record<string, string>} car
 * @returns {Row[]}
 */
export function tray(steps, done, at, car) {
  /** @type {Record<string, Row>} */
  const rows = {};
  steps.forEach((step, place) => {
    const over = done(step);
    if (!over && place < at) return;
    counts(step, car).forEach((count) => {
      const row = rows[count.sort] || (rows[count.sort] = { sort: count.sort, now: 0, goes: 0, over: 0, bagged: 0 });
      if (over) {
        row.now += count.out - count.back - count.moved - count.bagged - count.binned;
        row.bagged += count.bagged;
      } else row.goes += count.back + count.moved + count.bagged + count.binned - count.out;
    });
  });
  return Object.values(rows).map((row) => ({ ...row, over: row.now - row.goes }));
}

/* The places of the steps before one that are not done and would have moved fasteners. */
export function passedOver(steps, done, at, car) {
  return Array.from(steps.keys()).filter((place) => place < at && !done(steps[place]) && moves(steps[place], car));
}

/* Where the tray is looked into: before the last part with fasteners goes on, and before a battery is joined. */
export function looks(steps, car) {
  const places = Array.from(steps.keys());
  const last = places.filter((place) => steps[place].section === "refit" && moves(steps[place], car)).pop();
  return places.filter((place) => place === last || steps[place].turns.some((turn) => turn[0] === "battery" && turn[2] === "on"));
}

/* What a sort of a step is kept under: its place in the step, which is the same in every language. */
export function keyOf(step, sort) {
  const places = step.lines.flatMap((line, at) => line.counts.map((count, place) => [count.sort, `${at}.${place}`]));
  return (places.find(([one]) => one === sort) || [sort, sort])[1];
}

/* The sort of a place, in this page's language; of one that the record no longer has, what it was kept under. */
function sortAt(step, key) {
  const [line, count] = key.split(".").map(Number);
  const found = step && step.lines[line] && step.lines[line].counts[count];
  return found ? found.sort : key;
}

/**
 * By step and sort what broke or was lost and has to be bought.
 * @param {Kept} kept
 * @param {Step[]} steps all of the vehicle's
 */
export function spoilt(kept, steps) {
  const named = Object.fromEntries(steps.map((step) => [step.id, step]));
  return Object.entries(kept.spoilt).flatMap(([step, sorts]) => Object.entries(sorts).filter(([, count]) => count > 0)
    .map(([key, count]) => ({ step, sort: sortAt(named[step], key), count })));
}
