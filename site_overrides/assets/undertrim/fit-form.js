/* The form beside each opening: type the dimensions of gear and see the verdict. Its fields stand in fit-form-fields.js, what is typed is read in fit-form-typed.js; sums and words come from the other fit-*.js and lengths.js. */

import { page } from "./chosen.js";
import { all, field, make, target } from "./elements.js";
import { askedOf, forms, kindsFor } from "./gear-asked.js";
import { carsInWords, suiting } from "./fit-cars.js";
import { group, lengthField, pick } from "./fit-form-fields.js";
import { fill, gather, read, typedSomething } from "./fit-form-typed.js";
import { stopsOf, stopsTyped } from "./fit-joint.js";
import { driven, load } from "./fit-load.js";
import { replaced } from "./fit-margins.js";
import { between as partsFor, open as carsOf, use } from "./fit-place.js";
import { receiver } from "./fit-receiver.js";
import { checks, notes, verdictLine } from "./fit-shown.js";
import { speaker } from "./fit-speaker.js";
import { stopped, together } from "./fit-verdict.js";
import { matches } from "./concerns.js";
import { ask } from "./shelf.js";
import { list, say } from "./words.js";

/** @import { Form, Shelf } from "published" */
/** @import { Asked } from "./fit-place.js" */

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
const spots = all(".ut-try", page); // before a visit takes any of them out of the document
/** @type {Shelf} */
let shelf;

/**
 * @param {HTMLElement} spot
 * @param {Form} place
 */
function build(spot, place) {
  const id = "try-" + spot.dataset.opening + "-", kind = KINDS[place.kind];
  const rows = kind.fields, stock = shelf.stock.filter((item) => item.kind === place.gear);
  const start = pick(id + "from", say("fit-form/start"), [["", say("fit-form/nothing")]].concat(stock.map((item) => [item.id, item.name])));
  const clearances = make("details", {}, make("summary", {}, say("fit-form/usual")),
    ...kind.usual.map((row) => lengthField(id + "usual-" + row[0], say(row[1]), shelf.usual[row[0]].text)));
  const out = make("div", { "class": "ut-try-out", "aria-live": "polite" });
  const form = make("form", { "class": "ut-try-form" }, start, ...rows.map((row) => group(id, row)), clearances);
  spot.append(form, out);
  start.querySelector("select").addEventListener("change", (event) => {
    const chosen = stock.find((item) => item.id === target(event).value);
    if (chosen) fill(id, rows, chosen.gear);
    answer(id, spot.dataset.opening, out);
  });
  form.addEventListener("input", () => { answer(id, spot.dataset.opening, out); });
  form.addEventListener("submit", (event) => { event.preventDefault(); });
  page.addEventListener("ut-visit", () => { answer(id, spot.dataset.opening, out); });
  answer(id, spot.dataset.opening, out);
}

function usual(id, kind, wrong) {
  const found = { ...shelf.usual };
  KINDS[kind].usual.forEach((row) => {
    const length = read(id + "usual-" + row[0], wrong);
    if (length && typeof length === "object") found[row[0]] = replaced(found[row[0]], length);
  });
  return found;
}

/**
 * Why gear of the shelf, or gear of which only the size is known, is no plain replacement; with its cars where it is not so in all.
 * @param {Asked} asked
 * @param {Record<string, string>[]} cars
 * @param {string} chosen the id of what the form was filled from
 */
function stops(asked, cars, chosen) {
  const { joining } = asked.place, gear = asked.stock.find((item) => item.id === chosen), found = new Map();
  if (!joining) return [];
  cars.forEach((car) => {
    const shelved = suiting(asked.stock, asked.vehicle, asked.written, car);
    (gear ? stopsOf(gear, joining, car, shelved) : stopsTyped(joining, car, shelved)).forEach((words) => { found.set(words, (found.get(words) || []).concat([car])); });
  });
  return [...found].map(([words, having]) => having.length === cars.length ? words : say("fit-form/in-cars", { words, cars: carsInWords(having, cars, asked.labels) }));
}

/**
 * What may go between in any of some cars; `sure` for what may in all of them.
 * @param {Asked} asked
 * @param {Record<string, string>[]} cars
 */
function between(asked, cars) {
  const each = cars.map((car) => partsFor(asked.place, suiting(asked.stock, asked.vehicle, asked.written, car)));
  return asked.stock.filter((item) => each.some((parts) => parts.includes(item))).map((item) => ({ name: item.name, gear: item.gear, sure: each.every((parts) => parts.includes(item)) }));
}

/**
 * @param {string} id
 * @param {string} opening
 * @param {HTMLElement} out
 */
function answer(id, opening, out) {
  if (!out.isConnected) return; // the visit leaves this opening out
  const asked = askedOf(opening, shelf), { place } = asked, cars = carsOf(asked).there;
  const wrong = [], rows = KINDS[place.kind].fields;
  const gear = gather(id, rows, wrong), room = usual(id, place.kind, wrong), things = between(asked, cars);
  out.textContent = "";
  if (wrong.length) out.append(make("p", {}, say("fit-form/fields-unread", { count: wrong.length })));
  if (!typedSomething(id)) return;
  /** @type {(gear: any, opening: any, between: any, usual: any) => any} */
  const reckoned = KINDS[place.kind].reckoned; // by kind, as the opening and the fields of its form are
  const found = stopped(loaded(reckoned(gear, place.opening, things, room), gear, asked, cars), stops(asked, cars, field(id + "from").value), true);
  show(out, found, place.notes.concat(unsure(found, things)), KINDS[place.kind].closing);
}

/* With the load in each kind of car that it may be; what several say alike is said once. */
function loaded(found, gear, asked, cars) {
  const seen = [], loads = asked.place.loads.filter((one) => cars.some((car) => matches(one.clauses, car)));
  loads.flatMap((one) => driven(one, asked.fitted)).forEach((one) => {
    const check = load(gear, one);
    if (!seen.some((other) => other.words === check.words)) seen.push(check);
  });
  return seen.length ? together(found, seen) : found;
}

function unsure(found, things) {
  return things.filter((item) => !item.sure && found.parts.includes(item.name)).map((item) => say("fit-form/some-cars", { name: item.name }));
}

function show(out, found, more, closing) {
  out.append(verdictLine(found), checks(found), notes(found.notes.concat(more)));
  out.append(make("p", {}, make("small", {}, list([say(closing), say("safety/maker-first")], "sentences") + ".")));
}

/* The fields stand in the page once somebody opens the form: then the shelf is asked for. */
async function begin(spot, said) {
  try { shelf = await ask(kindsFor(Object.keys(forms))); } catch (error) {
    said.textContent = say("fit-form/missing");
    return;
  }
  use(shelf);
  said.remove();
  if (!spot.querySelector("form")) build(spot, forms[spot.dataset.opening]);
}

spots.forEach((spot) => {
  const place = forms[spot.dataset.opening];
  if (!place || !(place.kind in KINDS)) { spot.remove(); return; }
  const said = make("p", { role: "status" }, say("gear-choice/coming"));
  spot.append(make("summary", {}, say(KINDS[place.kind].title)), said);
  spot.addEventListener("toggle", () => { if (!spot.querySelector("form")) begin(spot, said); });
});
