/* Where a visit is kept: in the address, which can be copied, in the links to the vehicle's other pages, and on the device for the next time. */

import { chosen, known, page } from "./chosen.js";
import { all } from "./elements.js";
import { read, write } from "./visit-text.js";

const key = "undertrim:" + known.address;
const paths = all(".ut-views a", page).map((link) => /** @type {HTMLAnchorElement} */ (link).pathname);
const links = /** @type {HTMLAnchorElement[]} */ (all("a[href]", page))
  .filter((link) => paths.includes(link.pathname) && !link.getAttribute("href").startsWith("#"));

function kept() {
  try { return JSON.parse(localStorage.getItem(key)) || {}; } catch (error) { return {}; }
}

/* The visit of the address; where it says none, the one that was kept. */
export function asked() { return read(location.search.slice(1) || kept().visit || "", known); }

export function ticked() { return kept().ticks || []; }

export function keep(ticks) {
  try {
    localStorage.setItem(key, JSON.stringify({ visit: write(chosen(), known), ticks }));
  } catch (error) { /* a browser that keeps nothing still shows everything */ }
}

export function link() {
  const text = write(chosen(), known);
  links.forEach((one) => { one.search = text; });
}

/* Some browsers let a page from a folder on disk change no address; its links have the visit all the same. */
export function address() {
  const text = write(chosen(), known);
  try {
    history.replaceState(history.state, "", location.pathname + (text && "?" + text) + location.hash);
  } catch (error) { /* see above */ }
}
