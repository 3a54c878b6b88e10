/* What people type beside names, in the reader's language: months, what stands between two times, what may be left out, and phrases with what they mean. */

import { fold } from "./finder-names.js";
import { say } from "./words.js";

const BODIES = ["hatchback", "saloon", "estate", "coupe", "convertible", "pick-up", "van", "minibus", "off-road"];
const SIDES = ["left", "right"];
const KINDS = ["receiver", "speaker", "tweeter", "amplifier"];

/** @typedef {[sort: string, value: string]} Meaning */

function listed(text) { return text.split(",").map((one) => fold(one.trim())); }

/** @type {ReturnType<typeof learnt>} */
let known;

function learnt() {
  /** @type {Map<string, Meaning[]>} */
  const phrases = new Map();
  const add = (sort, value, text) => {
    listed(text).map((phrase) => phrase.replace(/-/g, " ")).forEach((phrase) => { phrases.set(phrase, [...(phrases.get(phrase) || []), [sort, value]]); });
  };
  SIDES.forEach((value) => { add("side", value, say(`finder-words/side-${value}`)); });
  BODIES.forEach((value) => { add("body", value, say(`finder-words/body-${value}`)); });
  KINDS.forEach((value) => { add("kind", value, say(`finder-words/kind-${value}`)); });
  return { months: listed(say("finder-words/months")), between: listed(say("finder-words/between")), idle: listed(say("finder-words/idle")), phrases };
}

/** The words, read once. */
export function words() {
  known = known || learnt();
  return known;
}
