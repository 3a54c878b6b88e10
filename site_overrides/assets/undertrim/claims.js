/* Claims: what somebody says is so on a car, kept on this device until it leaves as a file (schema/claim.schema.json), or in words. */

/**
 * One answer about one fact, as the schema describes it: `says` or `found`.
 * @typedef {object} Claim
 * @property {string} [vehicle] the record that it is about; or
 * @property {string} [gear] that of gear, by its id
 * @property {string} about
 * @property {string} [says]
 * @property {string} [found]
 * @property {string} [was]
 * @property {string} how
 * @property {string} on
 * @property {string} by
 * @property {string} [with]
 * @property {{ year: number | string, side: string, is?: Record<string, string> }} [car] none where it is about gear on the bench
 * @property {string} [size] of gear that did not go in: which of its sizes was in the way
 * @property {string} [hit] and what it met
 * @property {string} [note]
 * @property {{ file: string, shows: string }} [photo] a picture of it, which is kept beside the claims (photos-kept.js)
 */

const KEY = "undertrim:claims", BY = "undertrim:claims-by";
const TEXTS = ["vehicle", "gear", "about", "size", "hit", "says", "found", "was", "how", "on", "by", "with", "note"];

/* A browser that keeps nothing still lets them leave, as long as the page is open. */
let unkept = "";

function isPhoto(one) { return typeof one === "object" && one !== null && typeof one.file === "string" && typeof one.shows === "string"; }

function isClaim(one) {
  return typeof one === "object" && one !== null && typeof (one.vehicle || one.gear) === "string" && typeof one.about === "string"
    && typeof (one.car || {}) === "object" && (one.photo === undefined || isPhoto(one.photo)) && TEXTS.every((name) => one[name] === undefined || typeof one[name] === "string");
}

/** @returns {Claim[]} */
export function claims() {
  try {
    const found = JSON.parse(unkept || localStorage.getItem(KEY) || "[]");
    return Array.isArray(found) ? found.filter(isClaim) : [];
  } catch (error) { return []; }
}

/** @param {Claim[]} all */
function keep(all) {
  const text = JSON.stringify(all);
  try { localStorage.setItem(KEY, text); } catch (error) { unkept = text; }
  document.dispatchEvent(new CustomEvent("ut-claims"));
}

/** @param {Claim} claim */
export function add(claim) { keep(claims().concat(claim)); }

/**
 * One in the place of those that are about the same, or none.
 * @param {(one: Claim) => boolean} same
 * @param {Claim | null} claim
 */
export function replace(same, claim) {
  const all = claims(), at = all.findIndex(same), others = all.filter((one) => !same(one));
  if (claim) others.splice(at < 0 ? others.length : at, 0, claim);
  keep(others);
}

/**
 * All of them, each changed as it must be.
 * @param {(one: Claim) => Claim} change
 */
export function changeAll(change) { keep(claims().map(change)); }

/** @param {number} place */
export function drop(place) { keep(claims().filter((_, at) => at !== place)); }
export function dropAll() { keep([]); }

/* Who made the last one: nobody types that twice. */
export function whoBefore() { try { return localStorage.getItem(BY) || ""; } catch (error) { return ""; } }
export function remember(by) { try { localStorage.setItem(BY, by); } catch (error) { /* then it is typed again */ } }

const SHARED = ["vehicle", "gear", "by", "on", "how", "with", "car"];

/* All of them, as their file holds them: what several have in common stands once, at the top. */
export function asFile() {
  const all = claims(), [first] = all;
  const common = SHARED.filter((name) => all.length > 1 && first[name] !== undefined && all.every((one) => JSON.stringify(one[name]) === JSON.stringify(first[name])));
  const only = (one, wanted) => Object.fromEntries(Object.entries(one).filter(([name]) => common.includes(name) === wanted));
  return JSON.stringify({ claims: 1, ...only(first || {}, true), answers: all.map((one) => only(one, false)) }, null, 1) + "\n";
}
