/* Lengths as people type them, and as pages print them: the same as the program's own reading of "2 3/16 in", with the same words for what
   cannot be read, and the same printed numbers. The table of units comes with the site. */

import { list, number, say, wayOut as toDo } from "./words.js";

/** @import { Units } from "published" */

const LONGEST = 40;
const NUMERAL = /^([-−]?)(?:(?:([0-9]+)(?: | ?- ?))?([0-9]+) ?[/⁄] ?([0-9]+)|([0-9]+(?:\.[0-9]+)?|\.[0-9]+))([^0-9]*)$/;
const SPACES = /[\t-\r\x1c-\x20\x85\xa0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]+/;
/** @type {Units} */
let kind;

/**
 * Takes the table of units, before anything is read.
 * @param {Units} table
 */
export function use(table) { kind = table; }

/* A text that is no length, with the way out: a sentence of the catalogue by its code. */
export class Unread extends Error {
  constructor(code, values) {
    super(say(code, values));
    this.hint = toDo(code, values);
  }
}

/* In quotes for a message: printable, and cut when long. */
function quoted(text) {
  const letters = Array.from(text).map((letter) => letter !== " " && /[\p{C}\p{Z}]/u.test(letter) ? "?" : letter);
  return say("lists/quoted", { value: letters.length > LONGEST ? letters.slice(0, LONGEST - 1).join("") + "…" : letters.join("") });
}

/* The nearest number of 15 digits: what a product of short decimals comes to, without the dust of floats. */
function clean(value) { return Number(value.toPrecision(15)); }

/** @param {string} text a number or a fraction */
function factor(text) {
  const [top, bottom] = text.split("/").map(Number);
  return bottom ? top / bottom : top;
}

/**
 * Half up to so many decimals, no trailing zeros; a small number keeps two digits and is never 0.
 * @param {number} value
 * @param {number} decimals
 */
function rounded(value, decimals) {
  const size = Math.abs(value);
  const below = (places) => clean(size * 10 ** places) < 1;
  while (size && below(decimals)) decimals += below(decimals + 1) ? 1 : 2;
  const whole = Math.floor(clean(size * 10 ** decimals) + 0.5);
  const digits = (whole / 10 ** decimals).toFixed(decimals);
  return (value < 0 ? "-" : "") + (decimals ? digits.replace(/\.?0+$/, "") : digits);
}

/**
 * To so many decimals; what lies exactly between two goes to the even digit, as the program rounds. That can only be an odd number of
 * halves, quarters, eighths ... of the last decimal.
 * @param {number} value
 * @param {number} decimals
 */
export function round(value, decimals) {
  const text = Math.abs(value).toFixed(decimals);
  const between = Math.abs(value) * 2 ** (decimals + 1) % 2 === 1;
  const found = Number(text) - (between && Number(text.slice(-1)) % 2 ? 10 ** -decimals : 0);
  return Math.sign(value) * Number(found.toFixed(decimals));
}

/**
 * A value in mm, rounded in the unit that people of the other system use.
 * @param {number} value
 * @param {"metric" | "inch"} system
 */
function other(value, system) {
  const row = kind.other.find((one) => one.from === system && (one.below === undefined || Math.abs(value) < one.below));
  return row ? rounded(value / factor(kind.units[row.to].factor), row.decimals) + " " + row.to : "";
}

/**
 * A length as pages print it: 62 mm (2.44 in).
 * @param {number} value in mm
 */
export function both(value) {
  const metric = round(value, 2);
  return number(rounded(metric, 2)) + " mm (" + (number(other(metric, "metric")) || "0 in") + ")";
}

/* Dots, and spaces and hyphens between letters, as one dot. (Looking behind in the expression itself stops old phones.) */
function joined(spelling) {
  return spelling.replace(/ ?[·⋅•∙*.] ?|[ -](?=\S)/g, (joint, at) => /^[ -]$/.test(joint) && !/\S/.test(spelling.charAt(at - 1)) ? joint : ".");
}

/* The unit meant by a spelling: as it stands, or in capitals where a unit allows them. */
function find(spelling) {
  const word = joined(spelling), names = Object.keys(kind.units);
  return names.find((name) => kind.units[name].spellings.indexOf(word) >= 0) ||
    names.find((name) => kind.units[name].any_case && folded(kind.units[name]).indexOf(word.toLowerCase()) >= 0);
}

function folded(unit) { return unit.spellings.map((one) => one.toLowerCase()); }

function tidy(typed) {
  if (Array.from(typed).length > LONGEST) throw new Unread("units/too-long", { text: quoted(typed) });
  return typed.normalize("NFC").split(SPACES).filter(Boolean).join(" ");
}

/* A letter that is a fraction of its own, such as ½. */
function vulgar(text) {
  return Array.from(text).some((letter) => letter > "~" && letter !== "⁄" && letter.normalize("NFKC").indexOf("⁄") >= 0);
}

/* { value, step, text, shown, least } in mm; throws Unread with the way out. */
export function read(typed) {
  const text = tidy(typed), found = NUMERAL.exec(text);
  if (!found || vulgar(text)) throw new Unread("units/unreadable", { text: quoted(text), hint: wayOut(text) });
  const spelling = found[6].replace(/^ | $/g, "");
  const numeral = found[3] ? parted(found, text, spelling) : pointed(found);
  const name = find(spelling);
  if (!name) throw refused(text, numeral, spelling);
  const unit = kind.units[name];
  if (numeral.parts && !unit.fractions) throw new Unread("units/no-fractions", { text: quoted(text), hint: offers(numeral) });
  if (found[1]) throw new Unread("units/negative", { text: quoted(text), kind: kind.name });
  const size = factor(unit.factor), second = other(clean(numeral.value * size), unit.system);
  return {
    value: clean(numeral.value * size), step: clean(coarse(numeral, unit.mark || 1) * size), text,
    shown: number(numeral.text) + " " + name + (second ? " (" + number(second) + ")" : ""), least: false,
  };
}

function refused(text, numeral, spelling) {
  if (!spelling) return new Unread("units/no-unit", { text: quoted(text), hint: offers(numeral) });
  const word = joined(spelling);
  const owner = kind.elsewhere.find((one) => one.exact.indexOf(word) >= 0 || one.any_case.indexOf(word.toLowerCase()) >= 0);
  if (owner) return new Unread("units/of-another-kind", { text: quoted(text), other: owner.name, kind: kind.name, hint: inUnits() });
  const near = nearest(word.toLowerCase());
  const slip = near && !(numeral.parts && !kind.units[near].fractions);
  const hint = slip ? say("drives/write", { written: quoted(numeral.text + " " + near) }) : inUnits();
  return new Unread("units/unknown-unit", { unit: quoted(spelling), text: quoted(text), hint });
}

function inUnits() { return say("units/in-units", { units: list(kind.offer, "or"), example: quoted(kind.example) }); }

/* The unit that a spelling is a slip for: wrong case, else at least three quarters alike. */
function nearest(word) {
  const owners = {};
  Object.keys(kind.units).forEach((name) => { folded(kind.units[name]).forEach((one) => { owners[one] = name; }); });
  if (Object.prototype.hasOwnProperty.call(owners, word)) return owners[word];
  const ranked = Object.keys(owners).map((known) => ({ known, share: 2 * alike(known, word) / (known.length + word.length) }))
    .filter((one) => word.length > 2 && one.share >= 0.75)
    .sort((a, b) => b.share - a.share || (a.known < b.known ? 1 : -1));
  return ranked.length ? owners[ranked[0].known] : "";
}

/* How many letters two words share: in their longest common run, and then left and right of it. */
function alike(one, other) {
  let best = { size: 0, at: 0, there: 0 };
  for (let i = 0; i < one.length; i += 1) {
    for (let j = 0; j < other.length; j += 1) {
      let size = 0;
      while (i + size < one.length && j + size < other.length && one[i + size] === other[j + size]) size += 1;
      if (size > best.size) best = { size, at: i, there: j };
    }
  }
  if (!best.size) return 0;
  return best.size + alike(one.slice(0, best.at), other.slice(0, best.there)) +
    alike(one.slice(best.at + best.size), other.slice(best.there + best.size));
}

function pointed(found) {
  const plain = found[5][0] === "." ? "0" + found[5] : found[5];
  return { text: (found[1] ? "-" : "") + plain, value: Number(plain), parts: 0, decimals: (plain.split(".")[1] || "").length };
}

function parted(found, text, spelling) {
  const whole = Number(found[2] || 0), top = Number(found[3]), bottom = Number(found[4]);
  if (!bottom) throw new Unread("units/by-zero", { text: quoted(text) });
  if (top >= bottom) {
    const hint = whole || !spelling ? say("units/check") : say("drives/write", { written: quoted(mixed(top, bottom) + " " + spelling) });
    throw new Unread("units/improper", { text: quoted(text), hint });
  }
  const shown = (found[1] ? "-" : "") + (whole ? whole + " " : "") + top + "/" + bottom;
  return { text: shown, value: whole + top / bottom, parts: bottom, decimals: 0 };
}

function divisor(a, b) { return b ? divisor(b, a % b) : a; }

/* A ratio above one in lowest terms, as people write it: 1 3/16. */
function mixed(top, bottom) {
  const common = divisor(top, bottom), rest = (top % bottom) / common;
  return Math.floor(top / bottom) + (rest ? " " + rest + "/" + bottom / common : "");
}

/* Half of what the last digit or mark stands for. */
function coarse(numeral, mark) {
  return numeral.decimals ? 0.5 / 10 ** numeral.decimals : 0.5 / Math.max(numeral.parts, mark);
}

function offers(numeral) {
  const names = kind.offer.filter((name) => kind.units[name].fractions || !numeral.parts);
  return say("drives/write", { written: list(names.map((name) => quoted(numeral.text + " " + name)), "or") });
}

/** The first value of a range, with the unit at its end. */
function least(text) {
  const numbers = text.match(/[0-9]+(?:\.[0-9]+)?/g) ?? [""];
  const last = numbers[numbers.length - 1] ?? "";
  return (numbers[0] ?? "") + text.slice(text.lastIndexOf(last) + last.length);
}

function wayOut(text) {
  if (/[0-9],[0-9]{3}(?![0-9])/.test(text)) return say("units/no-comma", { written: list([quoted(text.replace(/,/g, "")), quoted(text.replace(/,/g, "."))], "or") });
  if (/[0-9],[0-9]/.test(text)) return say("units/decimal-point", { written: quoted(text.replace(/,/g, ".")) });
  if (/[0-9.]e[-+]?[0-9]/i.test(text)) return say("units/no-exponent");
  if (vulgar(text)) return say("units/slash");
  if (/[0-9][^0-9/]*(?:-|–|\.\.\.?|…| to )[^0-9/]*[0-9]/.test(text)) return say("units/no-range", { written: quoted(least(text)) });
  return say("units/one-number", { example: quoted(kind.example) });
}
