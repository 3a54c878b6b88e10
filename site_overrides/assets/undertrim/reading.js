/* Which language a page is read in: that of its address where this holds a visit; else what the reader chose on this device; else the
   browser's. The frame leads to the same page in each other language (partials/alternate.html). */

import { all } from "./elements.js";
import { BASE, TOP } from "./keeper-asked.js";
import { tag } from "./words.js";

const CHOSEN = "undertrim:language";

/** @returns {HTMLAnchorElement[]} */
function ways() { return /** @type {HTMLAnchorElement[]} */ (all(".ut-languages a[hreflang]")); }

/* The top of the site in a language, as an address; of one that it is not in, that of this page's. */
export function topIn(language) {
  const way = ways().find((one) => one.hreflang === language);
  return way ? new URL(way.dataset.top, location.href).href : BASE;
}

/* What the reader chose; null where nobody did, and where the browser keeps nothing, so that no choice could be undone. */
function chosen() {
  try { return localStorage.getItem(CHOSEN) || ""; } catch (error) { return null; }
}

function plain(language) { return language.toLowerCase().split("-")[0]; }

/* The language, of those that this page is there in, for whoever reads it. */
function wanted() {
  const there = [tag(), ...ways().map((one) => one.hreflang)], mine = chosen();
  if (mine === null || there.includes(mine)) return mine || tag();
  return navigator.languages.map((one) => there.find((other) => plain(other) === plain(one))).find(Boolean) || tag();
}

/* The folder of the language that the reader wants, from the top of the whole site: what a device keeps. */
export function placeWanted() { return topIn(wanted()).slice(TOP.length); }

/* An address with a visit opens in its own language: who handed it over has read it so. */
function holdsVisit() { return location.search !== "" || location.hash.startsWith("#take="); }

function go() {
  const way = holdsVisit() ? undefined : ways().find((one) => one.hreflang === wanted());
  if (!way) return;
  const address = way.href + location.hash; // where the site is one file, that knows better how to come there
  if (document.dispatchEvent(new CustomEvent("ut-leave", { bubbles: true, cancelable: true, detail: address }))) location.replace(address);
}

/* The link goes where this page is now: to its visit, and to its place in the page. */
function follow(way) {
  way.search = location.search || way.search;
  way.hash = location.hash;
}

ways().forEach((way) => {
  ["pointerdown", "focus"].forEach((name) => { way.addEventListener(name, () => { follow(way); }); });
  way.addEventListener("click", () => {
    follow(way);
    try { localStorage.setItem(CHOSEN, way.hreflang); } catch (error) { /* then each visit's address says it */ }
  });
});
go();
