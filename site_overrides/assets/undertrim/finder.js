/* The box that finds: a combobox with a list (ARIA 1.2). What is typed stays in it: nothing is sent or kept. */

import { byId, field, make, target } from "./elements.js";
import { load, looking, split, tooMany, vinTable, wanted } from "./finder-index.js";
import { search } from "./finder-match.js";
import { searchMore } from "./finder-more.js";
import { group, others, vehicles } from "./finder-options.js";
import { query } from "./finder-query.js";
import { counted, ofNumber, whyNone } from "./finder-said.js";
import { BASE } from "./keeper-asked.js";
import { say } from "./words.js";

const MOST_SHOWN = 20, MOST_OF_GROUP = 6, FEW = 2;
const READING = 1500, PAUSE = 350; // ms, longer than between two letters of a word. A default of ours.
const NEXT_YEAR = new Date().getFullYear() + 1; // of which models are sold already

const input = field("ut-query"), found = byId("ut-found"), said = byId("ut-said"), panel = byId("ut-finds");
const car = document.querySelector(".ut-vehicle") && location.pathname.match(/vehicles\/([^/]+\/[^/.]+)(?:\.\w+)?\.html$/);
const here = car ? `vehicles/${car[1]}.find` : "";
const NAMED = ["finder/gear", "finder/book"], FIRST = !input.closest(".ut-bar");
const TEXT = "finder/text", tried = new Set();
let failed = false, waiting = false, pause = 0, more = 0, active = -1;

/* What else the site has. One that does not come is not missed. */
function askMore(paths) {
  paths.filter((path) => !tried.has(path)).forEach((path) => {
    tried.add(path);
    load(path).then(show, show);
  });
}

/* What has a name at once, whole texts where nothing else is found. On the first page who finds a car goes on with it, and needs no more: there it comes
   when somebody stays. Gives whether something may still be found in what is not here. */
function askBesides(cars, others) {
  clearTimeout(more);
  const named = NAMED.filter((path) => !tried.has(path)), next = named.length ? named : cars || others || tried.has(TEXT) ? [] : [TEXT];
  if (next.length) more = setTimeout(() => { askMore(next); }, named.length && !FIRST ? 0 : cars ? READING : PAUSE);
  return !cars && !others && next.length > 0;
}

/* One or two pieces are asked for at once; more, since a few letters begin many names, when nothing was typed for a moment. */
function askPieces(asked) {
  clearTimeout(pause);
  const paths = wanted(asked), ask = () => { paths.forEach((path) => { load(path).then(() => { failed = false; show(); }, () => { failed = true; show(); }); }); };
  waiting = paths.length > FEW;
  if (!waiting) return ask();
  pause = setTimeout(ask, PAUSE);
  return undefined;
}

function address(one) {
  if (one.from !== "here") return BASE + one.entry[3];
  const [file, place] = one.entry[3].split("#");
  return `${BASE}vehicles/${car[1].split("/")[0]}/${file}${location.search}#${place}`;
}

/* Each sort of what else there is, under its heading: that with the best first, and what is in this car before all. */
function besides(text) {
  const sorted = new Map();
  searchMore(text).forEach((one) => {
    const sort = one.from === "here" ? "here" : one.entry[0];
    sorted.set(sort, (sorted.get(sort) || []).concat([one]));
  });
  const made = ([sort, of]) => group(`ut-group-${sort}`, sort === "gear" ? say("sheet/gear") : say(`finder/group-${sort}`), others(of.slice(0, MOST_OF_GROUP), address));
  return [...sorted].sort(([one], [other]) => Number(other === "here") - Number(one === "here")).flatMap(made);
}

function show() {
  const typed = input.value;
  active = -1;
  input.removeAttribute("aria-activedescendant");
  if (!typed.trim() || !vinTable()) return close();
  const asked = query(typed, vinTable());
  askPieces(asked);
  const every = search(asked, vinTable(), NEXT_YEAR), { words, answers } = counted(every, MOST_SHOWN);
  const hits = answers.size ? [...answers.keys()].map((row) => every.find((hit) => hit.row === row)) : every; // in the order of the answers
  const cars = group("ut-group-vehicles", say("finder/group-vehicles"), vehicles(asked, hits.slice(0, MOST_SHOWN), answers));
  const number = asked.number || asked.misread, rest = number ? [] : besides(typed);
  const onCar = rest.length && rest[0].getAttribute("aria-labelledby") === "ut-group-here" ? [rest.shift()] : [];
  found.replaceChildren(...onCar, ...cars, ...rest);
  const others = options().length - Math.min(hits.length, MOST_SHOWN);
  tell(asked, hits, others, words, !number && askBesides(hits.length, others));
  panel.hidden = false;
  input.setAttribute("aria-expanded", String(options().length > 0));
  if (options().length) mark(0);
  return undefined;
}

function tell(asked, hits, others, words, pending) {
  const none = looking() || waiting || pending ? say("finder/looking") : failed ? say("finder/part-missing") : others ? "" : whyNone(asked, vinTable(), NEXT_YEAR, split());
  const lines = [hits.length ? words : none, ...ofNumber(asked, hits, vinTable(), NEXT_YEAR), hits.length && tooMany() ? say("finder/type-more") : "", others ? say(hits.length ? "finder/others" : "finder/finds", { count: others }) : ""].filter(Boolean);
  said.replaceChildren(...lines.map((text) => make("span", {}, text + " ")));
}

function close() {
  found.replaceChildren();
  said.textContent = "";
  panel.hidden = true;
  input.setAttribute("aria-expanded", "false");
}

function options() { return /** @type {HTMLElement[]} */ (Array.from(found.querySelectorAll("[role=option]"))); }

function mark(index) {
  const every = options();
  if (every[active]) every[active].removeAttribute("aria-selected");
  active = Math.max(0, Math.min(index, every.length - 1));
  every[active].setAttribute("aria-selected", "true");
  every[active].scrollIntoView({ block: "nearest" });
  input.setAttribute("aria-activedescendant", every[active].id);
}

input.addEventListener("input", show);
input.addEventListener("focus", show);
input.addEventListener("keydown", (event) => {
  if ((event.key === "ArrowDown" || event.key === "ArrowUp") && options().length) {
    event.preventDefault();
    mark(active + (event.key === "ArrowDown" ? 1 : -1));
  } else if (event.key === "Enter" && options()[active]) {
    event.preventDefault();
    options()[active].click();
  } else if (event.key === "Escape") {
    input.value = "";
    close();
  }
});
const box = byId("ut-find");
document.addEventListener("click", (event) => { if (!box.contains(target(event))) close(); });
box.addEventListener("focusout", (event) => { if (event.relatedTarget && !box.contains(/** @type {Node} */ (event.relatedTarget))) close(); });
found.addEventListener("click", () => { close(); }); // a link within the page leaves the list behind
/* A number is nobody else's affair: a page that is left with one comes back with an empty box. */
window.addEventListener("pagehide", () => {
  const asked = vinTable() && query(input.value, vinTable());
  if (asked && (asked.number || asked.misread)) input.value = "";
  close();
});
if (here) askMore([here]);
load("finder/start").then(show, () => { failed = true; panel.hidden = false; said.textContent = say("finder/part-missing"); });
