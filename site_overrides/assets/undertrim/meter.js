/* Says which function a meter's readings agree with, what to measure next, and which button a resistance is.
   The table is data/functions.toml. The logic is that of derive/wiring: tests/vectors/meter.py runs in both. */

/** @import { MeterTable, Sureness } from "published" */

const LONGEST = 60;
const SPACE = /[ \t\n\r\f\v\u00a0]+/g;
const UNSHOWN = /[\u0000-\u001f\u007f-\u009f\u2028\u2029]/g;
const NUMBER = /^([+\-−]?)([0-9]+(?:\.[0-9]+)?|\.[0-9]+) ?(.*)$/s;
const COMMA = /^[+\-−]?[0-9]+,[0-9].*$/s;
const MARKS = /[ ,;:()]+/;
const STANDINGS = ["agrees", "open", "disagrees"];

function lower(text) {
  return text.replace(/[A-Z]/g, (letter) => letter.toLowerCase());
}

function has(list, item) {
  return list.indexOf(item) >= 0;
}

/* ---- reading what was typed ---- */

/* A text that is no reading, with the way out; `id` says in a word what is wrong. */
export class Misread extends Error {
  constructor(id, message, hint) {
    super(message);
    this.id = id;
    this.hint = hint;
  }
}

function shown(text) {
  const letters = Array.from(text.replace(UNSHOWN, "?"));
  return letters.length > 40 ? letters.slice(0, 39).join("") + "…" : letters.join("");
}

/** @param {MeterTable} table */
function refuse(table, id, text, word) {
  const row = table.problem[id];
  const states = Object.keys(table.state).map((name) => table.state[name].says[0]).join(", ");
  function filled(template) {
    return [["{states}", states], ["{word}", shown(word || "")], ["{text}", shown(text)]].reduce((made, pair) => made.split(pair[0]).join(pair[1]), template);
  }
  throw new Misread(id, filled(row.message), filled(row.hint));
}

/* One reading; throws Misread for a text that is none. */
/** @param {MeterTable} table */
export function read(table, text) {
  const tidied = text.replace(SPACE, " ").replace(/^ +| +$/g, "");
  if (!tidied) refuse(table, "empty", tidied);
  if (Array.from(tidied).length > LONGEST) refuse(table, "too-long", tidied);
  const first = tidied.split(" ")[0];
  if (has(table.grammar.open, lower(first))) {
    return finished(table, tidied, { measures: "ohm", ten: 0 }, Infinity, 0, tidied.slice(first.length + 1));
  }
  return withNumber(table, tidied);
}

/** @param {MeterTable} table */
function withNumber(table, text) {
  if (COMMA.test(text)) refuse(table, "comma", text);
  const found = NUMBER.exec(text);
  if (!found) refuse(table, "no-number", text);
  const rest = found[3];
  const spelling = rest.split(/[ ,;]/)[0];
  const unit = unitOf(table, spelling);
  if (!unit) refuse(table, spelling ? "unknown-unit" : "no-unit", text, spelling);
  const sign = found[1] === "-" || found[1] === "−" ? "-" : "";
  const value = Number(sign + found[2] + "e" + unit.ten) + 0;
  const step = Number("5e" + (unit.ten - (found[2].split(".")[1] || "").length - 1));
  return finished(table, text, unit, value, step, rest.slice(spelling.length));
}

/** @param {MeterTable} table */
function unitOf(table, spelling) {
  return table.unit.filter((row) => has(row.exact, spelling) || has(row.any_case, lower(spelling)))[0];
}

/** @param {MeterTable} table */
function finished(table, text, unit, value, step, rest) {
  const grammar = table.grammar;
  const tokens = lower(rest).split(MARKS).filter((token) => token && !has(grammar.filler, token));
  function says(list) { return tokens.some((token) => has(list, token)); }
  const said = grammar.ac.concat(grammar.dc, grammar.pair, grammar.ground);
  const named = statesOf(table, text, tokens.filter((token) => !has(said, token)));
  const kind = kindOf(table, text, unit, says(grammar.ac), says(grammar.dc), says(grammar.pair));
  if (value < 0 && kind !== "volts") refuse(table, "negative", text);
  return { text, kind, state: stateOf(table, text, named, kind), value, step };
}

/** @param {MeterTable} table */
function phrases(table) {
  const made = new Map();
  Object.keys(table.state).forEach((name) => {
    table.state[name].says.forEach((phrase) => {
      made.set(phrase.split(" ").filter((word) => !has(table.grammar.filler, word)).join(" "), name);
    });
  });
  return made;
}

/** @param {MeterTable} table */
function statesOf(table, text, tokens) {
  const known = phrases(table);
  const found = [];
  while (tokens.length) {
    let size = tokens.length;
    while (size && !known.has(tokens.slice(0, size).join(" "))) size -= 1;
    if (!size) refuse(table, "unknown-state", text, tokens.join(" "));
    found.push(known.get(tokens.slice(0, size).join(" ")));
    tokens = tokens.slice(size);
  }
  return found;
}

/** @param {MeterTable} table */
function kindOf(table, text, unit, saidAc, saidDc, pair) {
  const ac = unit.ac || saidAc;
  if (ac && (unit.dc || saidDc)) refuse(table, "ac-dc", text);
  if (unit.measures === "ohm") {
    if (ac) refuse(table, "ac-ohms", text);
    return pair ? "pair" : "ohms";
  }
  if (pair && !ac) refuse(table, "pair-volts", text);
  return ac ? "ac" : "volts";
}

/** @param {MeterTable} table */
function stateOf(table, text, named, kind) {
  if (!named.length) {
    if (table.kind[kind].dead) return "key-off";
    refuse(table, "no-state", text);
  }
  const found = named.filter((name) => named.every((other) => other === name || has(table.state[name].beside, other)))[0];
  if (!found) refuse(table, "two-states", text);
  return found;
}

/* ---- what readings say of a function ---- */

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
    return { id, words: "its supply of " + supply + " V", low: supply * 0.85, high: supply * 1.1, sure: "practice" };
  }
  return { id, words: row.words, low: row.low, high: "high" in row ? row.high : Infinity, sure: row.sure };
}

function inside(reading, band) {
  return reading.value + reading.step >= band.low && reading.value - reading.step <= band.high;
}

/** @param {MeterTable} table */
function isLive(table, reading) {
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

/* ---- what to measure next ---- */

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

/* ---- what readings can be besides the functions of a radio ---- */

/* `recorded` is what consider() made of the record's function, null for an unknown wire. */
/** @param {MeterTable} table */
export function suspicions(table, readings, recorded) {
  return Object.keys(table.suspect).map((id) => {
    const row = table.suspect[id];
    const texts = readings.filter((reading, index) => brings(table, row, reading) && holds(table, row, readings, recorded, index)).map((reading) => reading.text);
    return { id, words: row.words, do: row.do, stop: Boolean(row.stop), readings: texts };
  }).filter((one) => one.readings.length);
}

/** @param {MeterTable} table */
function brings(table, row, reading) {
  const stated = !row.states || has(row.states, reading.state);
  return stated && (row.reads[reading.kind] || []).some((id) => {
    const band = table.band[id];
    return inside(reading, { low: band.low, high: "high" in band ? band.high : Infinity });
  });
}

/** @param {MeterTable} table */
function holds(table, row, readings, recorded, index) {
  if (row.dead && readings.some((reading) => isLive(table, reading))) return false;
  if (row.where === "instead") return Boolean(recorded) && instead(table, row, recorded, recorded.findings[index]);
  if (row.where === "unrecorded") return !recorded;
  if (row.where === "lone") {
    return !(recorded && recorded.standing === "agrees") && weigh(table, readings)[0].standing === "disagrees";
  }
  return !recorded || recorded.findings[index].verdict !== "agrees";
}

/** @param {MeterTable} table */
function instead(table, row, recorded, finding) {
  const concerned = !row.groups || has(row.groups, table.function[recorded.function].group);
  return concerned && finding.verdict === "disagrees" && Boolean(finding.band) && has(row.expects, finding.band.id);
}

/* ---- ladders: the bands come from the record, lowest first ---- */

export function place(rungs, ohms) {
  function high(rung) { return rung.high === null ? Infinity : rung.high; }
  const holding = rungs.filter((rung) => rung.low <= ohms && ohms <= high(rung));
  if (holding.length) {
    const kind = holding.length > 1 ? "ambiguous" : holding[0].idle ? "idle" : "button";
    return { kind, rungs: holding, below: null, above: null };
  }
  const below = rungs.filter((rung) => high(rung) < ohms);
  const above = rungs.filter((rung) => rung.low > ohms);
  return {
    kind: "none", rungs: [],
    below: below.reduce((best, rung) => !best || high(rung) > high(best) ? rung : best, null),
    above: above.reduce((best, rung) => !best || rung.low < best.low ? rung : best, null)
  };
}

/* ---- words ---- */

function figures(value) {
  return value.toFixed(2).replace(/\.?0+$/, "").replace("-", "−");
}

export function measured(value, unit) {
  if (unit === "ohm" && Math.abs(value) >= 1e6) return figures(value / 1e6) + " Mohm";
  if (unit === "ohm" && Math.abs(value) >= 1e3) return figures(value / 1e3) + " kohm";
  return figures(value) + " " + unit;
}

export function ranged(band, unit) {
  if (band.high === null || band.high === Infinity) return measured(band.low, unit) + " and up";
  return measured(band.low, unit) + " to " + measured(band.high, unit);
}

/** @param {MeterTable} table */
export function names(table, found) {
  const said = {};
  found.forEach((name) => { said[name] = table.function[name].words; });
  Object.keys(table.together).forEach((group) => {
    const whole = Object.keys(table.function).filter((name) => table.function[name].group === group);
    if (whole.every((name) => name in said)) {
      whole.forEach((name) => { said[name] = table.together[group]; });
    }
  });
  return Array.from(new Set(found.map((name) => said[name]))).join(", ");
}
