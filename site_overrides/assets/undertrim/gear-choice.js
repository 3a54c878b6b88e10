/* Gear for each opening of the visit: not chosen yet, or one piece of the stock with its verdict. The stock, and what works out whether it fits, are asked for when somebody opens a choice. */

import { choose, chosen, chosenCar, known } from "./chosen.js";
import { byId, make } from "./elements.js";
import { askedOf, command, kindsFor } from "./gear-asked.js";
import { showFitting } from "./gear-time.js";
import { SIGNS } from "./fit-signs.js";
import { tryIt } from "./tried.js";
import { seen } from "./tried-seen.js";
import { ask, load } from "./shelf.js";
import { address } from "./visit-kept.js";
import { list, say } from "./words.js";

/** @import { Shelf } from "published" */

const MOST_SHOWN = 12;
const spot = byId("ut-gear");
/** @type {Shelf | null} */
let shelf = null;
let opened = "", typed = "", missing = false;

/* The openings worked at, in the order in which they are named, once each. */
function worked() {
  return [...new Set(known.targets.filter((target) => chosen().jobs.includes(target.id)).map((target) => target.opening))].filter((opening) => opening in known.words.takes);
}

function gearOf(opening) { return (chosen().gear[opening] || {}).gear || ""; }

function nameOf(opening) {
  const at = known.targets.filter((target) => target.opening === opening && chosen().jobs.includes(target.id));
  return list(at.map((target) => target.name), "semicolon");
}

async function fetchShelf() {
  try {
    const [found] = await Promise.all([ask(kindsFor(worked())), load("assets/undertrim/gear-fit.js")]);
    window.undertrimFit.use(found);
    shelf = found;
    missing = false;
  } catch (error) { missing = true; }
  showGear();
}

/* One answer as a line: the sign and the verdict in words, what decides, and in which cars where they differ. */
function line(row, opening) {
  const words = window.undertrimFit.verdictWords(row.fit), close = row.fit.checks.find((check) => check.verdict === "fits" && check.margin !== null && check.unit === "mm");
  const said = list([row.fit.reason, row.fit.kind.startsWith("fits") && close ? close.words : "", ...row.fit.alters, ...row.gear.doubts].filter(Boolean), "semicolon");
  return [make("span", { "class": "ut-word" }, make("span", { "aria-hidden": "true" }, SIGNS[row.fit.kind]), " " + words),
    make("small", {}, row.cars ? say("gear-choice/worst-in", { said, cars: row.cars }) : said),
    ...seen(row.gear, known.address, known.words.written[opening], row.fit.kind).map((one) => make("small", { class: "ut-tried" }, one))];
}

function verdictOf(opening) {
  const gear = gearOf(opening);
  if (!gear) return null;
  if (missing) return make("p", { "class": "ut-gear-said" }, say("gear-choice/missing", { command: command("fit") }));
  if (!shelf) return make("p", { "class": "ut-gear-said" }, say("gear-choice/coming"));
  const found = shelf.stock.find((item) => item.id === gear);
  if (!found) return make("p", { "class": "ut-gear-said" }, say("gear-choice/not-in-stock", { gear }));
  if (found.kind !== known.words.takes[opening]) return make("p", { "class": "ut-gear-said" }, say("gear-choice/of-other-kind", { gear: found.name }));
  const asked = askedOf(opening, shelf), { free } = window.undertrimFit.open(asked);
  if (!free.length) return make("p", { "class": "ut-gear-said" }, say("gear-choice/closed"));
  const row = window.undertrimFit.verdict(asked, found, free);
  return make("p", { "class": "ut-gear-said ut-verdict ut-is-" + row.fit.kind }, ...line(row, opening), tryIt(found, { vehicle: known.address, opening: known.words.written[opening], place: nameOf(opening), car: chosenCar() }));
}

function plainly(text) { return text.normalize("NFKD").replace(/[\u0300-\u036f]/g, "").toLowerCase(); }

function holdsTyped(row) {
  const text = plainly(row.gear.name + " " + row.gear.id + " " + window.undertrimFit.verdictWords(row.fit));
  return plainly(typed).split(/\s+/).every((word) => text.includes(word));
}

function pick(opening, id, children, kind) {
  const button = make("button", { type: "button", "class": "ut-gear-pick" + (kind ? " ut-verdict ut-is-" + kind : ""), "aria-pressed": String(gearOf(opening) === id), "data-gear": id }, ...children);
  button.addEventListener("click", () => { take(opening, id); });
  return make("li", {}, button);
}

/* The leads of a receiver are its own, so those that were chosen go with it. */
function take(opening, id) {
  const visit = chosen(), others = Object.entries(visit.gear[opening] || {}).filter(([role]) => role !== "leads");
  opened = "";
  choose({ ...visit, gear: { ...visit.gear, [opening]: id ? { ...Object.fromEntries(others), gear: id } : {} } });
  address();
  toggleOf(opening).focus();
}

function toggleOf(opening) { return /** @type {HTMLElement} */ (spot.querySelector(`[data-opening="${opening}"] .ut-gear-toggle`)); }

/* The list below the box: what holds what was typed. */
function fill(opening, every, out, status) {
  const found = every.filter(holdsTyped), first = found.slice(0, MOST_SHOWN), rest = found.length - first.length;
  const open = gearOf(opening) && !typed ? [pick(opening, "", [make("b", {}, say("gear-choice/leave-open"))], "")] : [];
  out.replaceChildren(...open, ...first.map((row) => pick(opening, row.gear.id, [make("b", {}, row.gear.name), ...line(row, opening)], row.fit.kind)));
  const counted = found.length === every.length ? say("gear-choice/number", { count: every.length }) : say("gear-choice/some", { found: found.length, count: every.length });
  status.textContent = !found.length ? say("gear-choice/none-found") : list([counted, rest ? say("gear-choice/more", { count: rest }) : ""].filter(Boolean), "semicolon");
}

function panel(opening) {
  const id = "ut-gear-list-" + opening, box = make("div", { "class": "ut-gear-list", id });
  if (missing || !shelf) {
    box.append(make("p", { role: "status" }, missing ? say("gear-choice/missing", { command: command("fit") }) : say("gear-choice/coming")));
    return box;
  }
  const every = window.undertrimFit.ranked(askedOf(opening, shelf));
  if (!every.length) {
    const none = !window.undertrimFit.open(askedOf(opening, shelf)).free.length;
    box.append(make("p", {}, none ? say("gear-choice/closed") : say("fit-shown/none-page", { kind: say(`gear-kinds/${known.words.takes[opening]}`) })));
    return box;
  }
  const input = /** @type {HTMLInputElement} */ (make("input", { id: id + "-find", type: "search", autocomplete: "off" })), out = make("ul"), status = make("p", { role: "status" });
  input.value = typed;
  input.addEventListener("input", () => { typed = input.value; fill(opening, every, out, status); });
  box.append(make("label", { "for": id + "-find" }, say("gear-choice/find")), input, status, out);
  fill(opening, every, out, status);
  return box;
}

function block(opening) {
  const gear = gearOf(opening), found = shelf && shelf.stock.find((item) => item.id === gear), open = opened === opening;
  const toggle = make("button", { type: "button", "class": "ut-gear-toggle", "aria-expanded": String(open), "aria-controls": "ut-gear-list-" + opening },
    make("span", {}, nameOf(opening)), make("b", {}, found ? found.name : gear || say("vehicle-page/not-chosen")));
  toggle.addEventListener("click", () => {
    opened = open ? "" : opening;
    typed = "";
    showGear();
    toggleOf(opening).focus();
    if (opened && (!shelf || missing)) fetchShelf();
  });
  return make("div", { "class": "ut-gear-place", "data-opening": opening }, toggle, verdictOf(opening), open ? panel(opening) : null);
}

/* Shown anew with every change of the visit; the stock comes by itself where the visit has gear already. */
export function showGear() {
  const openings = worked(), chosenOnes = openings.filter(gearOf);
  spot.hidden = !openings.length;
  if (!openings.includes(opened)) opened = "";
  const kinds = kindsFor(openings), wanted = shelf && kinds.some((kind) => kind in shelf.pieces && !shelf.stock.some((item) => item.kind === kind));
  if (wanted) shelf = null;
  spot.replaceChildren(make("h3", {}, say("gear-choice/title")), ...openings.map(block),
    ...(chosenOnes.length ? [make("p", { "class": "ut-gear-sheet" }, make("small", {}, say("gear-choice/sheet", { command: command("sheet") })))] : []));
  showFitting(shelf, openings);
  if (!shelf && !missing && (chosenOnes.length || (wanted && opened))) fetchShelf();
}
