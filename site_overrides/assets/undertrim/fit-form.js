/* The form beside each opening: type the dimensions of gear and see the verdict. Its fields stand in fit-form-fields.js, what is typed is read in fit-form-typed.js; sums and words come from the other fit-*.js and lengths.js. */

import { chosenCar, page } from "./chosen.js";
import { all, byId, field, target } from "./elements.js";
import { group, lengthField, make, pick } from "./fit-form-fields.js";
import { fill, gather, read, typedSomething } from "./fit-form-typed.js";
import { load } from "./fit-load.js";
import { replaced } from "./fit-margins.js";
import { receiver } from "./fit-receiver.js";
import { speaker } from "./fit-speaker.js";
import { stopped, together } from "./fit-verdict.js";
import * as lengths from "./lengths.js";
import { list, say } from "./words.js";

/** @import { Form, Forms, Shelf } from "published" */

const SIGNS = { fits: "✓", "fits-with": "✓+", marginal: "≈", unknown: "?", stop: "✕", "does-not-fit": "✕", fails: "✕" };
/* One entry for each kind of opening that has a form: its sums, what they leave out, the fields of its gear, and the usual clearances; labels are codes of the catalogue. A kind without one has no form. */
const KINDS = {
  speaker: {
    title: "fit-form/try-speaker",
    closing: "fit-form/speaker-not-reckoned",
    reckoned: speaker,
    fields: [
      { name: "basket", label: "fit-form/basket", shape: true },
      { name: "flange", label: "fit-form/flange", shape: true },
      { name: "bolts", label: "speaker-shown/bolts", bolts: true },
      { name: "depth", label: "fit-form/depth" },
      { name: "magnet", label: "fit-form/magnet" },
      { name: "protrusion", label: "fit-form/protrusion" },
      { name: "gasket", label: "fit-form/gasket" },
      { name: "impedance", label: "fit-form/impedance", ohms: true }
    ],
    usual: [["rear_glass", "fit-form/to-glass"], ["rear", "fit-form/to-behind"], ["grille", "fit-form/to-grille"], ["overlap", "fit-form/overlap"], ["bolts", "fit-form/play"]]
  },
  receiver: {
    title: "fit-form/try-receiver",
    closing: "fit-form/receiver-not-reckoned",
    reckoned: receiver,
    fields: [
      { name: "body", label: "fit-form/body", face: true },
      { name: "trim", label: "fit-form/trim", face: true },
      { name: "chassis_depth", label: "fit-form/chassis-depth" },
      { name: "plug_room", label: "fit-form/plug-room" }
    ],
    usual: [["plug_room", "fit-form/for-plugs"], ["sleeve", "fit-form/for-sleeve"], ["filler", "fit-form/filler"]]
  }
};
const holder = byId("ut-fit-data");
const spots = all(".ut-try", page); // before a visit takes any of them out of the document
/** @type {Shelf} */
let shelf;

/**
 * @param {HTMLElement} spot
 * @param {Form} place
 */
function build(spot, place) {
  const id = "try-" + spot.dataset.opening + "-", kind = KINDS[place.kind];
  if (!kind) { spot.remove(); return; }
  const rows = kind.fields;
  const stock = Object.keys(shelf.stock).filter((key) => shelf.stock[key].kind === place.gear);
  const start = pick(id + "from", say("fit-form/start"), [["", say("fit-form/nothing")]].concat(stock.map((key) => [key, shelf.stock[key].name])));
  const clearances = make("details", {}, [make("summary", { text: say("fit-form/usual") })].concat(
    kind.usual.map((row) => lengthField(id + "usual-" + row[0], say(row[1]), shelf.usual[row[0]].text))));
  const out = make("div", { "class": "ut-try-out", "aria-live": "polite" });
  const form = make("form", { "class": "ut-try-form" }, [start].concat(rows.map((row) => group(id, row)), [clearances]));
  spot.append(make("summary", { text: say(kind.title) }), form, out);
  start.querySelector("select").addEventListener("change", (event) => {
    if (target(event).value) fill(id, rows, shelf.stock[target(event).value].gear);
    answer(id, place, out);
  });
  form.addEventListener("input", () => { answer(id, place, out); });
  form.addEventListener("submit", (event) => { event.preventDefault(); });
  page.addEventListener("ut-visit", () => { answer(id, place, out); });
  answer(id, place, out);
}

function usual(id, kind, wrong) {
  const found = { ...shelf.usual };
  KINDS[kind].usual.forEach((row) => {
    const length = read(id + "usual-" + row[0], wrong);
    if (length && typeof length === "object") found[row[0]] = replaced(found[row[0]], length);
  });
  return found;
}

/* Whether a condition can hold for what is said of the car; `sure` where it must. */
function holds(clauses, car, sure) {
  return Object.keys(clauses).every((name) => name in car ? clauses[name].indexOf(car[name]) >= 0 : !sure);
}

/**
 * Why the ranked list stops this gear, or gear of which only the size is known; with its cars where they are not chosen.
 * @param {Form} place
 * @param {string} id
 */
function stops(place, id) {
  const car = chosenCar(), chosen = field(id + "from").value;
  return place.stops.filter((item) => item.gear.indexOf(chosen) >= 0 && holds(item.clauses, car))
    .map((item) => holds(item.clauses, car, true) ? item.words : say("fit-form/in-cars", { words: item.words, cars: item.when }));
}

/** @param {Form} place */
function between(place) {
  const car = chosenCar();
  return place.between.filter((item) => item.clauses.some((one) => holds(one, car)))
    .map((item) => {
      const made = shelf.stock[item.id], sure = item.clauses.some((one) => holds(one, car, true));
      return { name: made.name, gear: made.gear, sure };
    });
}

/**
 * @param {string} id
 * @param {Form} place
 * @param {HTMLElement} out
 */
function answer(id, place, out) {
  if (!out.isConnected) return; // the visit leaves this opening out
  const wrong = [], rows = KINDS[place.kind].fields;
  const gear = gather(id, rows, wrong), room = usual(id, place.kind, wrong), things = between(place);
  out.textContent = "";
  if (wrong.length) out.append(make("p", { text: say("fit-form/fields-unread", { count: wrong.length }) }));
  if (!typedSomething(id)) return;
  /** @type {(gear: any, opening: any, between: any, usual: any) => any} */
  const reckoned = KINDS[place.kind].reckoned; // by kind, as the opening and the fields of its form are
  const found = stopped(loaded(reckoned(gear, place.opening, things, room), gear, place), stops(place, id));
  show(out, found, place.notes.concat(unsure(found, things)), KINDS[place.kind].closing);
}

/* With the load in each kind of car that it may be; what several say alike is said once. */
function loaded(found, gear, place) {
  const car = chosenCar(), seen = [];
  (place.loads || []).filter((one) => holds(one.clauses, car)).forEach((one) => {
    const check = load(gear, one);
    if (!seen.some((other) => other.words === check.words)) seen.push(check);
  });
  return seen.length ? ({ ...together(found, seen)}) : found;
}

function unsure(found, things) {
  return things.filter((item) => !item.sure && found.parts.indexOf(item.name) >= 0)
    .map((item) => say("fit-form/some-cars", { name: item.name }));
}

function show(out, found, notes, closing) {
  const word = found.kind === "fits-with" && found.to_get.length ? say("verdicts/to-get") : say(`verdicts/${found.kind}`);
  out.append(make("p", { "class": "ut-try-verdict ut-is-" + found.kind }, [make("b", { text: SIGNS[found.kind] + " " + word }), found.reason ? " " + found.reason : ""]));
  const body = make("tbody", {}, found.checks.map(row));
  out.append(make("table", { "class": "ut-table ut-checks" }, [make("thead", {}, [make("tr", {}, [make("th", { scope: "col", text: say("fit-form/check") }), make("th", { scope: "col", text: say("fit-form/numbers") })])]), body]));
  const said = found.notes.concat(notes);
  if (said.length) out.append(make("ul", { "class": "ut-notes" }, said.map((note) => make("li", { text: note }))));
  out.append(make("p", {}, [make("small", { text: list([say(closing), say("safety/maker-first")], "sentences") + "." })]));
}

function row(check) {
  const numbers = check.numbers.filter((one) => one.value !== 0 || one.step)
    .map((one) => say("fit-shown/number", { label: one.label, number: one.default ? say("fit-shown/usual", { number: one.text }) : one.text }));
  return make("tr", {}, [make("th", { scope: "row", text: SIGNS[check.verdict] + " " + check.words }), make("td", { "data-label": say("fit-form/numbers"), text: list(numbers, "semicolon") })]);
}

/** @param {Shelf} given */
function start(given) {
  if (!page || !holder) return;
  shelf = given;
  lengths.use(given.units);
  /** @type {Forms} */
  const places = JSON.parse(holder.textContent);
  spots.forEach((spot) => { build(spot, places[spot.dataset.opening]); });
}

window.undertrimFitForm = { start };
