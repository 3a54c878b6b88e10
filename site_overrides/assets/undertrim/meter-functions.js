/* Which function the readings agree with, and what to measure next. The logic is that of derive/wiring. */

import { STANDINGS, has } from "./meter-readings.js";
import { say } from "./words.js";

/** @import { MeterTable, Sureness } from "published" */

/**
 * What a wire of a pattern should read; null where it says nothing of such a reading.
 * @param {MeterTable} table
 * @returns {{ id: string, words: string, low: number, high: number, sure: Sureness } | null}
 */
function bandOf(table, pattern, kind, state, supply) {
  if (table.kind[kind].dead && !table.state[state].ohms) return null;
  const named = table.pattern[pattern][kind] || {};
  const id = named[state] || named.always;
  if (!id) return null;
  const row = table.band[id];
  if (supply !== null && supply !== undefined && row.of_battery && id !== "between") {
    return { id, words: say("meter/its-supply", { volts: supply }), low: supply * 0.85, high: supply * 1.1, sure: "practice" };
  }
  return { id, words: row.words, low: row.low, high: "high" in row ? row.high : Infinity, sure: row.sure };
}

export function inside(reading, band) {
  return reading.value + reading.step >= band.low && reading.value - reading.step <= band.high;
}

/** @param {MeterTable} table */
export function isLive(table, reading) {
  return reading.kind === "volts" && !inside(reading, table.band.zero);
}

/** @param {MeterTable} table */
function hasVoltage(table, readings) {
  return readings.some((reading) => table.state[reading.state].rest && isLive(table, reading));
}

/** @param {MeterTable} table */
function judge(table, pattern, reading, supply, live) {
  const nothing = { verdict: "nothing", band: null, sure: "", why: "" };
  const dead = table.kind[reading.kind].dead;
  if (dead && !table.state[reading.state].ohms) return Object.assign(nothing, { why: "power" });
  if (dead && live) return Object.assign(nothing, { why: "live" });
  const band = bandOf(table, pattern, reading.kind, reading.state, supply);
  if (!band) return nothing;
  const weaker = Math.max(table.order.indexOf(table.pattern[pattern].sure), table.order.indexOf(band.sure));
  return { verdict: inside(reading, band) ? "agrees" : "disagrees", band, sure: table.order[weaker], why: "" };
}

/** @param {MeterTable} table */
function findings(table, pattern, readings, supply) {
  const live = hasVoltage(table, readings);
  return readings.map((reading) => judge(table, pattern, reading, supply, live));
}

function count(found, verdict) {
  return found.filter((finding) => finding.verdict === verdict).length;
}

function candidate(name, pattern, found) {
  const agreeing = count(found, "agrees");
  const disagreeing = count(found, "disagrees");
  const standing = disagreeing ? "disagrees" : agreeing ? "agrees" : "open";
  return { function: name, pattern, findings: found, agreeing, disagreeing, standing };
}

/* One function by the pattern of it that the readings suit best; behaves and supply are what a record says of the pin. */
/** @param {MeterTable} table */
export function consider(table, name, readings, behaves, supply) {
  const known = behaves && behaves !== "unknown";
  const tried = table.function[name].patterns.filter((pattern) => {
    const own = table.pattern[pattern].behaves;
    return (!known || !own.length || has(own, behaves)) && proved(table, pattern, readings);
  }).map((pattern) => candidate(name, pattern, findings(table, pattern, readings, supply)));
  if (!tried.length) {
    return candidate(name, null, readings.map(() => ({ verdict: "nothing", band: null, sure: "", why: "" })));
  }
  return tried.reduce((best, one) => better(one, best) ? one : best);
}

/* Whether the state was read without which a pattern looks like another function's. */
/** @param {MeterTable} table */
function proved(table, pattern, readings) {
  const needed = table.pattern[pattern].needs;
  return !needed || readings.some((reading) => reading.state === needed);
}

function better(one, best) {
  return one.disagreeing < best.disagreeing || (one.disagreeing === best.disagreeing && one.agreeing > best.agreeing);
}

/* Every function, the best first. */
/** @param {MeterTable} table */
export function weigh(table, readings) {
  const found = Object.keys(table.function).map((name) => consider(table, name, readings));
  return found.sort((a, b) => STANDINGS.indexOf(a.standing) - STANDINGS.indexOf(b.standing) ||
    a.disagreeing - b.disagreeing || b.agreeing - a.agreeing);
}

/** @param {MeterTable} table */
function owners(table, pattern) {
  return Object.keys(table.function).filter((name) => has(table.function[name].patterns, pattern));
}

/** @param {MeterTable} table */
function untried(table, readings, ohms) {
  const keyOff = readings.some((reading) => reading.kind === "volts" && reading.state === "key-off");
  const dead = ohms && keyOff && !hasVoltage(table, readings);
  const found = [];
  Object.keys(table.kind).forEach((kind) => {
    if (table.kind[kind].dead && !dead) return;
    Object.keys(table.state).forEach((state) => {
      const taken = readings.some((reading) => reading.kind === kind && reading.state === state);
      if (!taken) found.push([kind, state]);
    });
  });
  return found;
}

/** @param {MeterTable} table */
function leadingOf(table, remaining, readings, about) {
  const own = remaining.filter((pattern) => about && has(table.function[about].patterns, pattern));
  if (own.length) return own;
  const agreeing = remaining.map((pattern) => count(findings(table, pattern, readings), "agrees"));
  const most = Math.max(...agreeing);
  return remaining.filter((_, index) => agreeing[index] === most);
}

/** @param {MeterTable} table */
function attempt(table, kind, state, remaining, leading) {
  const known = remaining.map((pattern) => ({ pattern, band: bandOf(table, pattern, kind, state) }))
    .filter((item) => item.band);
  const score = [0, 0];
  known.forEach((a, index) => {
    known.slice(index + 1).forEach((b) => {
      if (!has(leading, a.pattern) && !has(leading, b.pattern)) return;
      if (!(a.band.high < b.band.low || b.band.high < a.band.low)) return;
      score[1] += 1;
      if (owners(table, a.pattern).join() !== owners(table, b.pattern).join()) score[0] += 1;
    });
  });
  return { score, next: { kind, state, outcomes: outcomes(table, known) } };
}

/** @param {MeterTable} table */
function outcomes(table, known) {
  return Object.keys(table.band).map((id) => {
    const here = known.filter((item) => item.band.id === id);
    const names = Object.keys(table.function).filter((name) => here.some((item) => has(table.function[name].patterns, item.pattern)));
    return here.length ? { band: here[0].band, functions: names } : null;
  }).filter(Boolean);
}

/* The reading that tells the leading patterns best from the others; null if none does for certain. */
/** @param {MeterTable} table */
export function next(table, readings, about) {
  const remaining = Object.keys(table.pattern).filter((pattern) => !count(findings(table, pattern, readings), "disagrees"));
  const leading = leadingOf(table, remaining, readings, about);
  const known = remaining.some((pattern) => about && has(table.function[about].patterns, pattern));
  const tried = untried(table, readings, known).map((one) => attempt(table, one[0], one[1], remaining, leading));
  return bestBy(tried, 0) || bestBy(tried, 1);
}

/* The first reading whose score is nearly the best; null where all of them are 0. */
function bestBy(tried, index) {
  const most = Math.max(...tried.map((one) => one.score[index]).concat(0));
  return most ? tried.filter((one) => one.score[index] * 5 >= most * 4)[0].next : null;
}
