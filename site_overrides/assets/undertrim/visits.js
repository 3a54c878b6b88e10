/* The visits that are kept on this device. Each stands under a key of its own and each change is made to what stands there now,
   so that two tabs do not undo each other's work. Nothing of it leaves the device by itself. */

/**
 * One visit: what the pages show of it, and what was done. Times are milliseconds as the device's clock counts them.
 * @typedef {object} Kept
 * @property {string} id
 * @property {string} vehicle the address of its vehicle
 * @property {string} title what the vehicle is called
 * @property {string} name what the people in the bay call the car: "red one, bay 2"
 * @property {string} text the visit, as it stands in an address
 * @property {string} language that it was last shown in; empty where that is not known
 * @property {number} began
 * @property {number} changed
 * @property {number} steps how many steps it has
 * @property {Record<string, number>} done when each step was done
 * @property {Record<string, number>} waits when each wait began
 * @property {Record<string, string>} notes what was noted at a step; at a test what it showed
 * @property {Record<string, Record<string, number>>} spoilt by step, how many fasteners of each sort broke or were lost
 * @property {Record<string, string>} report what the report says besides: by whom, which car, who agreed to what
 */

import { tag } from "./words.js";

const VISIT = "undertrim:visit:", CURRENT = "undertrim:current:";
const FIELDS = ["done", "waits", "notes", "spoilt", "report"];

/* A browser that keeps nothing still shows everything, as long as the page is open. */
/** @type {Record<string, string>} */
const unkept = {};

function get(key) {
  if (key in unkept) return unkept[key];
  try { return localStorage.getItem(key); } catch (error) { return null; }
}

function set(key, value) {
  try { localStorage.setItem(key, value); delete unkept[key]; } catch (error) { unkept[key] = value; }
}

function remove(key) {
  delete unkept[key];
  try { localStorage.removeItem(key); } catch (error) { /* it was not there */ }
}

function keys() {
  try { return Object.keys(localStorage).concat(Object.keys(unkept)); } catch (error) { return Object.keys(unkept); }
}

/* The entries of what may be an object whose values are as they must be. */
function entries(value, right) {
  return typeof value === "object" && value !== null ? Object.fromEntries(Object.entries(value).filter(([, one]) => right(one))) : {};
}

function isTag(value) { return isText(value) && /^[A-Za-z\d-]{2,35}$/.test(value); } // BCP 47
function isText(value) { return typeof value === "string"; }
function isTime(value) { return Number.isFinite(value) && value >= 0 && value < 8.64e15; } // ECMA-262: the last time a date can be
function isCounts(value) { return Object.keys(entries(value, (one) => Number.isInteger(one) && one > 0)).length > 0; }

/**
 * A visit from text: of this device, or of another one, where a stranger may have written it. Null for what is none; what is lacking or is
 * no such thing counts as nothing done.
 * @returns {Kept | null}
 */
export function fromText(text) {
  let read;
  try { read = JSON.parse(text); } catch (error) { return null; }
  if (!read || ![read.id, read.vehicle, read.title, read.text].every(isText)) return null;
  if (!/^[0-9a-f]{16}$/.test(read.id) || !/^[\w-]+\/[\w-]+$/.test(read.vehicle)) return null;
  const { id, vehicle, title } = read;
  return {
    id, vehicle, title, text: read.text, language: isTag(read.language) ? read.language : "", name: isText(read.name) ? read.name : "",
    began: isTime(read.began) ? read.began : 0, changed: isTime(read.changed) ? read.changed : 0, steps: isTime(read.steps) ? read.steps : 0,
    done: entries(read.done, isTime), waits: entries(read.waits, isTime), notes: entries(read.notes, isText),
    spoilt: entries(read.spoilt, isCounts), report: entries(read.report, isText),
  };
}

/** @returns {Kept | null} */
export function byName(id) {
  const text = get(VISIT + id);
  return text === null ? null : fromText(text);
}

/** All of them, the one that was last worked at first. */
export function every() {
  const ids = Array.from(new Set(keys().filter((key) => key.startsWith(VISIT)).map((key) => key.slice(VISIT.length))));
  return ids.map(byName).filter((one) => one !== null).sort((one, other) => other.changed - one.changed);
}

/* Whether anything was done that would be missed. */
export function begun(kept) { return kept.name !== "" || FIELDS.some((name) => Object.keys(kept[name]).length > 0); }

function made(vehicle, title, text) {
  const id = Array.from(crypto.getRandomValues(new Uint8Array(8)), (one) => one.toString(16).padStart(2, "0")).join("");
  const now = Date.now();
  return { id, vehicle, title, name: "", text, language: tag(), began: now, changed: now, steps: 0, done: {}, waits: {}, notes: {}, spoilt: {}, report: {} };
}

/* From now on this visit is the one that its vehicle's pages show. */
export function takeUp(kept) { set(CURRENT + kept.vehicle, kept.id); }

/* From now on the visit is in this page's language; that changes nothing of what was done. */
export function readHere(kept) {
  const now = byName(kept.id);
  if (now && now.language !== tag()) keep({ ...now, language: tag() });
}

/** @param {Kept} kept */
export function keep(kept) { set(VISIT + kept.id, JSON.stringify(kept)); }

/* What is forgotten is given back whole, so that it can be kept again. */
export function forget(id) {
  const kept = byName(id);
  remove(VISIT + id);
  return kept;
}

/**
 * Keeps a visit that comes from elsewhere. Where the same one is here already, both count: what is done on either device is done.
 * @param {Kept} other
 */
export function takeOver(other) {
  const mine = byName(other.id), later = !mine || other.changed >= mine.changed ? other : mine, earlier = mine && later === other ? mine : other;
  const both = { ...later };
  FIELDS.forEach((name) => { both[name] = { ...earlier[name], ...later[name] }; });
  keep(both);
  return both;
}

/** A new visit, not kept before something of it is. */
export function another(vehicle, title, text = "") {
  const fresh = made(vehicle, title, text);
  takeUp(fresh);
  return fresh;
}

/**
 * The visit that an address means: the one worked at if it says the same or nothing, else the last of the same text; else it is
 * another visit, so that a link from elsewhere does not change one under way.
 * @returns {Kept}
 */
export function meant(vehicle, title, text) {
  const mine = every().filter((one) => one.vehicle === vehicle);
  const current = mine.find((one) => one.id === get(CURRENT + vehicle)) || mine[0];
  if (current && (!text || current.text === text)) return current;
  const same = mine.find((one) => one.text === text);
  if (same) return same;
  return current && !begun(current) ? { ...current, text } : another(vehicle, title, text);
}

/**
 * Changes a visit as it stands now, also where another tab has changed it meanwhile.
 * @param {Kept} kept
 * @param {(kept: Kept) => void} by
 */
export function change(kept, by) {
  const now = byName(kept.id) || kept;
  by(now);
  now.changed = Date.now();
  keep(now);
  return now;
}

/* Tells of each change that another tab makes to a visit. */
export function watch(id, told) {
  window.addEventListener("storage", (event) => { if (event.key === VISIT + id()) told(); });
}
