/* Readings of a meter as people type them. The table is data/functions.toml. The logic is that of derive/wiring. */

import { list, say, wayOut } from "./words.js";

/** @import { MeterTable } from "published" */

const LONGEST = 60;
const SPACE = /[ \t\n\r\f\v\u00a0]+/g;
const UNSHOWN = /[\u0000-\u001f\u007f-\u009f\u2028\u2029]/g;
const NUMBER = /^([+\-−]?)([0-9]+(?:\.[0-9]+)?|\.[0-9]+) ?(.*)$/s;
const COMMA = /^[+\-−]?[0-9]+,[0-9].*$/s;
const MARKS = /[ ,;:()]+/;
export const STANDINGS = ["agrees", "open", "disagrees"];

function lower(text) {
  return text.replace(/[A-Z]/g, (letter) => letter.toLowerCase());
}

export function has(list, item) {
  return list.indexOf(item) >= 0;
}

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
  const states = list(Object.keys(table.state).map((name) => table.state[name].says[0]), "comma");
  const values = { text: shown(text), word: shown(word || ""), states };
  throw new Misread(id, say(`readings/${id}`, values), wayOut(`readings/${id}`, values));
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
