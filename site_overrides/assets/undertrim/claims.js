/* Claims: what somebody says is so on a car, kept on this device until it leaves as a file (schema/claim.schema.json), or in words. */

/**
 * One answer about one fact, as the schema describes it: `says` or `found`.
 * @typedef {object} Claim
 * @property {string} vehicle
 * @property {string} about
 * @property {string} [says]
 * @property {string} [found]
 * @property {string} [was]
 * @property {string} how
 * @property {string} on
 * @property {string} by
 * @property {string} [with]
 * @property {{ year: number | string, side: string, is?: Record<string, string> }} car
 * @property {string} [note]
 */

const KEY = "undertrim:claims", BY = "undertrim:claims-by";
const TEXTS = ["vehicle", "about", "says", "found", "was", "how", "on", "by", "with", "note"];

/* A browser that keeps nothing still lets them leave, as long as the page is open. */
let unkept = "";

function isClaim(one) {
  return typeof one === "object" && one !== null && typeof one.vehicle === "string" && typeof one.about === "string"
    && typeof one.car === "object" && one.car !== null && TEXTS.every((name) => one[name] === undefined || typeof one[name] === "string");
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

/** @param {number} place */
export function drop(place) { keep(claims().filter((_, at) => at !== place)); }
export function dropAll() { keep([]); }

/* Who made the last one: nobody types that twice. */
export function whoBefore() { try { return localStorage.getItem(BY) || ""; } catch (error) { return ""; } }
export function remember(by) { try { localStorage.setItem(BY, by); } catch (error) { /* then it is typed again */ } }

/* All of them, as their file holds them. */
export function asFile() { return JSON.stringify({ claims: 1, answers: claims() }, null, 1) + "\n"; }
