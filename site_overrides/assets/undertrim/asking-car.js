/* Who looks, with what, and at which car: asked once, before the questions, and kept on the device. */

import { changeAll, remember, whoBefore } from "./claims.js";
import { line, picks } from "./asking-inputs.js";
import { make } from "./elements.js";
import { list, say } from "./words.js";

/** @import { Asked } from "published" */
/** @import { Claim } from "./claims.js" */
/** @import { Screen } from "./asking-screen.js" */
/** @typedef {Claim["car"]} Car */

const UNKNOWN = "unknown", DRIVE_SIDE = "drive-side", WITH = "undertrim:claims-with";

function read(key) { try { return localStorage.getItem(key) || ""; } catch (error) { return unkept[key] || ""; } }
function write(key, text) {
  unkept[key] = text;
  try { localStorage.setItem(key, text); } catch (error) { /* then it is asked for again */ }
}
/** @type {Record<string, string>} */
const unkept = {};

export function today() {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}
/* The day of looking is that of the page, until somebody says another. */
let day = today();

export function whoAndWhen() { return { by: whoBefore(), on: day }; }
export function instrument() { return read(WITH); }

function key(asked) { return `undertrim:asked:${asked.vehicle}`; }

/** The car that was said, or null. @param {Asked} asked @returns {Car | null} */
export function carSaid(asked) {
  try {
    const car = JSON.parse(read(key(asked)) || "null");
    return car && typeof car === "object" && "year" in car && "side" in car ? car : null;
  } catch (error) { return null; }
}

/** @param {Asked} asked */
export function forgetCar(asked) { write(key(asked), ""); }

/** @param {Car | undefined} one @param {Car | null} other */
export function sameCar(one, other) {
  const told = (car) => JSON.stringify([car.year, car.side, Object.entries(car.is || {}).sort()]);
  return Boolean(one && other && told(one) === told(other));
}

/* Answers that were given at the car as it was said before are about the car as it is said now. */
function keepCar(asked, car) {
  const before = carSaid(asked);
  if (before && !sameCar(before, car)) changeAll((one) => one.vehicle === asked.vehicle && sameCar(one.car, before) ? { ...one, car } : one);
  write(key(asked), JSON.stringify(car));
}

/* The choices that the year decides: those which alone were built in all the months that a car of that year may be of. A model year may begin in the
   calendar year before it, and a car may be registered in the year after it was built. */
function byYear(asked, year) {
  if (typeof year !== "number") return {};
  const first = Math.max((year - 1) * 12, asked.built[0]), end = Math.min((year + 1) * 12, asked.built[1]);
  const decided = (asked.variants || []).map((variant) => [variant.id, variant.choices.find((one) => (one.built || []).length && first < end && one.built[0] <= first && end <= one.built[1])]);
  return Object.fromEntries(decided.filter(([, choice]) => choice).map(([id, choice]) => [id, choice.id]));
}

/** What is known of a car, by variant. @param {Asked} asked @param {Car} car @returns {Record<string, string>} */
export function choicesOf(asked, car) {
  const side = (asked.sides || []).length && car.side !== UNKNOWN ? { [DRIVE_SIDE]: car.side } : {};
  const said = Object.fromEntries(Object.entries(car.is || {}).filter(([, choice]) => choice !== UNKNOWN));
  return { ...byYear(asked, car.year), ...side, ...said };
}

/** @param {Asked} asked @param {Car} car */
export function carWords(asked, car) {
  const is = car.is || {};
  const labels = (asked.variants || []).map((variant) => variant.choices.find((one) => one.id === is[variant.id])).filter(Boolean);
  const side = car.side === UNKNOWN ? "" : say(`not-so/side-${car.side}`);
  return list([typeof car.year === "number" ? String(car.year) : "", side, ...labels.map((one) => one.label)].filter(Boolean), "comma") || say("asked/not-known");
}

function labelled(words, input, hint = "") { return make("label", { class: "ut-name" }, words, input.node || input, hint ? make("small", {}, hint) : null); }

/**
 * Who and when; with what, where something is measured.
 * @returns {Screen}
 */
export function you(measuring = true) {
  const by = line(say("ask/by"), whoBefore(), { maxlength: "20", name: "by" }, () => "");
  const tool = line(say("asked/with"), instrument(), { maxlength: "120", name: "with", placeholder: say("asked/with-example") }, () => "");
  const on = /** @type {HTMLInputElement} */ (make("input", { type: "date", value: day, max: today(), "aria-label": say("asked/on"), name: "on" }));
  return {
    show: () => [make("h2", {}, say(measuring ? "asked/you" : "asked/you-alone")), labelled(say("ask/by"), by), labelled(say("asked/on"), on),
      ...measuring ? [labelled(say("asked/with"), tool, say("asked/with-hint"))] : []],
    take() {
      if (!/[\p{L}\p{N}]/u.test(by.says())) return say("not-so/by-wanted");
      if (!on.value || on.value > today()) return say("asked/day-wrong");
      remember(by.says());
      write(WITH, tool.says());
      day = on.value;
      return "";
    },
    next: () => say("bay/next"),
  };
}

const CANNOT_TELL = () => ({ word: UNKNOWN, says: say("asked/not-known") });

/** @param {string} text @param {number[]} years */
function isYear(text, [first, last]) { return !text || (/^[0-9]{4}$/.test(text) && Number(text) >= first && Number(text) <= last); }

/** The year and the side. @param {Asked} asked @returns {Screen} */
function car(asked) {
  const before = carSaid(asked), [first, last] = asked.years.map(String);
  const year = line(say("not-so/year"), before && typeof before.year === "number" ? String(before.year) : "", { inputmode: "numeric", maxlength: "4", name: "year" }, () => "");
  const sides = (asked.sides || []).map((side) => ({ word: side, says: say(`not-so/side-${side}`) }));
  const side = picks([...sides, CANNOT_TELL()], before ? before.side : "");
  return {
    show: () => [make("h2", {}, say("asked/which-car")), labelled(say("not-so/year"), year, say("asked/year-hint", { first, last })),
      ...sides.length ? [make("fieldset", {}, make("legend", {}, say("not-so/side")), side.node)] : []],
    take() {
      if (!isYear(year.says(), asked.years)) return say("asked/year-wrong", { first, last });
      keepCar(asked, { ...before, year: year.says() ? Number(year.says()) : UNKNOWN, side: side.says() || UNKNOWN });
      return "";
    },
    next: () => say("bay/next"),
  };
}

/** One of the record's own questions about the car. @param {Asked} asked @param {Asked["variants"][number]} variant @returns {Screen} */
function choice(asked, variant) {
  const is = (carSaid(asked) || {}).is || {};
  const input = picks([...variant.choices.map((one) => ({ word: one.id, says: one.label, tell: one.tell })), CANNOT_TELL()], is[variant.id] || "");
  return {
    show: () => [make("h2", {}, variant.ask), input.node],
    take() {
      const now = carSaid(asked);
      keepCar(asked, { ...now, is: { ...now.is, [variant.id]: input.says() || UNKNOWN } });
      return "";
    },
    next: () => say("bay/next"),
  };
}

/** The screens before the questions. @param {Asked} asked @returns {Screen[]} */
export function carScreens(asked) {
  const said = carSaid(asked), decided = said ? byYear(asked, said.year) : {};
  return [you(), car(asked), ...(asked.variants || []).filter((variant) => !(variant.id in decided)).map((variant) => choice(asked, variant))];
}
