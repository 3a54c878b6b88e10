/* Where a visit is kept: in the address, which can be copied, in the links to the vehicle's other pages, and on the device with what was done. */

import { chosen, known, page } from "./chosen.js";
import { all } from "./elements.js";
import { another, byName, change, meant, readHere, takeUp, watch } from "./visits.js";
import { read, write } from "./visit-text.js";

/** @import { Kept } from "./visits.js" */

const paths = all(".ut-views a", page).map((link) => /** @type {HTMLAnchorElement} */ (link).pathname);
const links = /** @type {HTMLAnchorElement[]} */ (all("a[href]", page))
  .filter((link) => paths.includes(link.pathname) && !link.getAttribute("href").startsWith("#"));
const languages = /** @type {HTMLAnchorElement[]} */ (all(".ut-languages a"));
const title = page.querySelector("h1").textContent.trim().replace(/\s+/g, " ");

/** @type {Kept} */
let visit = meant(known.address, title, write(read(location.search.slice(1), known), known));
takeUp(visit);
readHere(visit);

/* The visit of the address; where it says none, the one that was kept. */
export function asked() { return read(location.search.slice(1) || visit.text, known); }

/** The visit as it is kept. */
export function kept() { return visit; }

/**
 * Changes what is kept of the visit.
 * @param {(kept: Kept) => void} by
 */
export function keep(by) {
  visit = change(visit, (one) => {
    one.text = write(chosen(), known);
    by(one);
  });
}

/* Begins another visit with the same choices; the one before stays kept. */
export function startAnother() { visit = another(known.address, title, write(chosen(), known)); }

/* Goes on with a visit that is kept. */
export function resume(other) {
  visit = other;
  takeUp(visit);
  history.replaceState(history.state, "", location.pathname);
}

/* Another tab may work at the same visit. */
export function heed(told) {
  watch(() => visit.id, () => {
    visit = byName(visit.id) || visit;
    told();
  });
}

export function link() {
  const text = write(chosen(), known);
  [...links, ...languages].forEach((one) => { one.search = text; });
}

/* Some browsers let a page from a folder on disk change no address; its links have the visit all the same. */
export function address() {
  const text = write(chosen(), known);
  try {
    history.replaceState(history.state, "", location.pathname + (text && "?" + text) + location.hash);
  } catch (error) { /* see above */ }
}
