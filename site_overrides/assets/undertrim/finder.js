/* Finds a vehicle by make, model and year, month or range typed in any order. The index comes as scripts that call undertrimFinder(). */

import { byId, field } from "./elements.js";
import * as when from "./finder-when.js";
import { showVisits } from "./visits-list.js";
import { say } from "./words.js";

/** @import { FinderRow } from "published" */

/** @type {{ row: FinderRow, forms: string[] }[]} */
let rows = [];
/** @type {Record<string, string[]>} */
const pieces = {}; // piece name -> words by which something in it can be found
const asked = {}; // pieces that are on their way or here
let active = -1;
const MOST_SHOWN = 20;

const box = byId("ut-finder");
const input = field("ut-query");
const list = byId("ut-found");
const said = byId("ut-said");
const base = /** @type {HTMLScriptElement} */ (document.currentScript).src.replace(/assets\/undertrim\/finder\.js.*$/, "");

function fold(text) {
  return text.normalize("NFKD").replace(/[\u0300-\u036f]/g, "").toLowerCase();
}

/* A name three ways: its words, its pieces between letters and digits, and all joined: "C-8" is c-8, c, 8 and c8. */
function forms(name) {
  const folded = fold(name);
  const words = folded.split(/\s+/);
  const parts = folded.match(/[a-z]+|\d+|[^\sa-z\d-]+/g) || [];
  return words.concat(parts, [folded.replace(/[^a-z0-9]+/g, ""), folded]);
}

function prepared(row) {
  const names = [row[1], row[2]].concat(row[6]);
  return { row, forms: names.map(forms).flat() };
}

window.undertrimFinder = (_, data) => {
  if (data.pieces) {
    Object.keys(data.pieces).forEach((piece) => {
      pieces[piece] = data.pieces[piece].map(forms).flat();
    });
  }
  if (data.rows) rows = rows.concat(data.rows.map(prepared));
  box.hidden = false;
  byId("ut-noscript").hidden = true;
  show();
};

/* How well a token fits: 3 a whole word, 2 its beginning, 1.5 the time, 1 inside, 0.5 one slip of the finger, 0 not at all. */
function fits(token, item) {
  let best = 0;
  item.forms.forEach((form) => {
    if (form === token) best = Math.max(best, 3);
    else if (form.indexOf(token) === 0) best = Math.max(best, 2);
    else if (token.length > 2 && form.indexOf(token) > 0) best = Math.max(best, 1);
    else if (token.length > 3 && best < 0.5 && oneSlip(token, form)) best = 0.5;
  });
  if (best < 1.5 && when.holds(when.read(token), item.row)) best = 1.5;
  return best;
}

function oneSlip(token, form) {
  if (Math.abs(token.length - form.length) > 1) return false;
  let i = 0;
  while (i < token.length && token[i] === form[i]) i += 1;
  const a = token.slice(i);
  const b = form.slice(i);
  return a.slice(1) === b.slice(1) || a.slice(1) === b || a === b.slice(1) ||
    (a[0] === b[1] && a[1] === b[0] && a.slice(2) === b.slice(2));
}

function tokens() {
  return when.split(fold(input.value));
}

function search(wanted) {
  const hits = [];
  rows.forEach((item) => {
    let score = 0;
    for (let i = 0; i < wanted.length; i += 1) {
      const one = fits(wanted[i], item);
      if (!one) return;
      score += one;
    }
    hits.push({ item, score });
  });
  hits.sort((a, b) => b.score - a.score || a.item.row[1].localeCompare(b.item.row[1]) ||
      a.item.row[2].localeCompare(b.item.row[2]) || b.item.row[4] - a.item.row[4]);
  return hits;
}

/* In a large collection: ask for the pieces in which every word that is no year occurs. */
function fetchPieces(wanted) {
  const words = wanted.filter((token) => !when.read(token).length && token.length > 1);
  if (!words.length) return 0;
  const near = Object.keys(pieces).filter((piece) => words.every((token) => pieces[piece].some((form) => form.indexOf(token) === 0)));
  near.slice(0, 6).forEach((piece) => {
    if (asked[piece]) return;
    asked[piece] = "coming";
    const script = document.createElement("script");
    script.src = base + "finder/" + piece + ".js";
    script.onload = () => { asked[piece] = "here"; show(); };
    script.onerror = () => { asked[piece] = ""; said.textContent = say("finder/part-missing"); };
    document.head.appendChild(script);
  });
  return near.filter((piece) => asked[piece] === "coming").length;
}

function entry(hit, index) {
  const row = hit.item.row;
  const option = document.createElement("li");
  option.setAttribute("role", "none");
  const link = document.createElement("a");
  link.setAttribute("role", "option"); // the link itself: nothing to press may stand inside an option
  link.id = "ut-found-" + index;
  link.href = base + "vehicles/" + row[0].split("/").map(encodeURIComponent).join("/") + ".html";
  link.tabIndex = -1;
  const name = document.createElement("b");
  name.textContent = row[1] + " " + row[2];
  const years = document.createElement("span");
  years.className = "ut-years";
  years.textContent = (row[3] === row[4] ? String(row[3]) : row[3] + "–" + row[4]) + (row[5] ? " " + row[5] : "");
  link.append(name, " ", years);
  option.appendChild(link);
  return option;
}

/* A time that no record covers is not a slip of the finger: what there is without it is said. */
function whyNone(wanted) {
  const times = wanted.filter((token) => when.read(token).length);
  const names = wanted.filter((token) => !when.read(token).length);
  if (Object.keys(pieces).length && !names.length) return say("finder/name-wanted");
  const without = times.length ? search(names).map((hit) => hit.item.row) : [];
  if (without.length) {
    const failing = times.find((token) => !without.some((row) => when.holds(when.read(token), row)));
    return when.recorded(without, when.read(failing || times[0]));
  }
  const odd = names.filter((token) => /^'?\d{1,4}[./–—-]\d/.test(token));
  if (odd.length && search(names.filter((token) => odd.indexOf(token) < 0)).length) {
    return say("finder/not-a-time", { typed: odd.join(" ") });
  }
  return say("finder/none");
}

function show() {
  const wanted = tokens();
  active = -1;
  list.textContent = "";
  if (!wanted.length) {
    said.textContent = "";
    input.setAttribute("aria-expanded", "false");
    input.removeAttribute("aria-activedescendant");
    return;
  }
  const coming = fetchPieces(wanted);
  const hits = search(wanted);
  hits.slice(0, MOST_SHOWN).forEach((hit, index) => { list.appendChild(entry(hit, index)); });
  input.setAttribute("aria-expanded", hits.length ? "true" : "false");
  if (hits.length > MOST_SHOWN) said.textContent = say("finder/first-shown", { count: hits.length, shown: MOST_SHOWN });
  else if (hits.length) said.textContent = say("finder/found", { count: hits.length });
  else if (coming) said.textContent = say("finder/looking");
  else said.textContent = whyNone(wanted);
  if (hits.length) mark(0);
}

function mark(index) {
  const options = list.children;
  if (options[active]) options[active].firstElementChild.removeAttribute("aria-selected");
  active = Math.max(0, Math.min(index, options.length - 1));
  if (options[active]) {
    options[active].firstElementChild.setAttribute("aria-selected", "true");
    options[active].scrollIntoView({ block: "nearest" });
    input.setAttribute("aria-activedescendant", options[active].firstElementChild.id);
  }
}

input.addEventListener("input", show);
input.addEventListener("keydown", (event) => {
  if (event.key === "ArrowDown" || event.key === "ArrowUp") {
    event.preventDefault();
    mark(active + (event.key === "ArrowDown" ? 1 : -1));
  } else if (event.key === "Enter" && list.children[active]) {
    event.preventDefault();
    list.children[active].querySelector("a").click();
  } else if (event.key === "Escape") {
    input.value = "";
    show();
  }
});
showVisits(byId("ut-visits"), () => true);
