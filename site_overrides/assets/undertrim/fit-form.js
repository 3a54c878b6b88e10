/* The form beside each opening: type a speaker's or receiver's dimensions and see the verdict. Sums and words come from fit-*.js and lengths.js. */

import { chosenCar, page } from "./chosen.js";
import { above, all, byId, field, fields, target } from "./elements.js";
import { load } from "./fit-load.js";
import { replaced } from "./fit-margins.js";
import { receiver } from "./fit-receiver.js";
import { speaker } from "./fit-speaker.js";
import { stopped, together } from "./fit-verdict.js";
import * as lengths from "./lengths.js";
import { list, number, say } from "./words.js";

/** @import { Form, Forms, Shelf } from "published" */

const SIGNS = { fits: "✓", "fits-with": "✓+", marginal: "≈", unknown: "?", stop: "✕", "does-not-fit": "✕", fails: "✕" };
/* One entry for each kind of opening that has a form: its sums, the fields of its gear, and the usual clearances; labels are codes of the catalogue. A kind without one has no form. */
const KINDS = {
  speaker: {
    title: "fit-form/try-speaker",
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
const MOST_BOLTS = 16;
const UNREAD = "unread";
const holder = byId("ut-fit-data");
/** @type {Shelf} */
let shelf;

function make(tag, options, children) {
  const made = document.createElement(tag);
  Object.keys(options || {}).forEach((key) => {
    if (key === "text") made.textContent = options.text;
    else made.setAttribute(key, options[key]);
  });
  (children || []).forEach((child) => { if (child) made.append(child); });
  return made;
}

/* One length with its label and the place for what is wrong with it. */
function lengthField(id, label, placeholder) {
  return make("div", { "class": "ut-try-field" }, [
    make("label", { "for": id, text: label }),
    make("input", { id, type: "text", autocomplete: "off", placeholder: placeholder || say("fit-form/example"), "aria-describedby": id + "-wrong" }),
    make("small", { id: id + "-wrong", "class": "ut-try-wrong", role: "alert" })
  ]);
}

function pick(id, label, choices) {
  return make("div", { "class": "ut-try-field" }, [
    make("label", { "for": id, text: label }),
    make("select", { id }, choices.map((choice) => make("option", { value: choice[0], text: choice[1] })))
  ]);
}

const SHAPES = ["round", "oval", "rectangle"];
const PATTERNS = ["circle", "rectangle"];

function shapes(names) { return names.map((name) => [name, say(`shapes/${name}`)]); }

function unknown() { return ["", say("fit-form/not-known")]; }

/* As many holes as a record may have, four first. */
function counts() {
  const found = [[4, 4]];
  for (let count = 2; count <= MOST_BOLTS; count += 1) if (count !== 4) found.push([count, count]);
  return found;
}

const OHMS = ["1", "2", "3", "4", "6", "8", "16"];

function group(id, row) {
  if (row.ohms) return pick(id + row.name, say(row.label), [unknown()].concat(OHMS.map((one) => [one, say("fit-speaker/ohms", { value: one })])));
  if (!row.shape && !row.face && !row.bolts) return lengthField(id + row.name, say(row.label));
  const inside = row.shape ? [pick(id + row.name + "-shape", say("fit-form/shape"), shapes(SHAPES))]
    : row.bolts ? [pick(id + "bolts-pattern", say("fit-form/pattern"), [unknown()].concat(shapes(PATTERNS))), pick(id + "bolts-count", say("fit-form/count"), counts())]
      : [];
  inside.push(lengthField(id + row.name + "-width", say("fit-form/width")), lengthField(id + row.name + "-height", say("fit-form/height")));
  if (row.bolts) inside.push(lengthField(id + "bolts-angle", say("fit-form/angle"), "45 deg"));
  return make("fieldset", {}, [make("legend", { text: say(row.label) })].concat(inside));
}

/* Whether a part is measured by one diameter; its fields are then one, and called so. */
function round(id, row) {
  if (row.face) return false;
  const said = field(id + row.name + (row.shape ? "-shape" : "-pattern")).value, one = said !== "oval" && said !== "rectangle";
  page.querySelector("label[for='" + id + row.name + "-width']").textContent = one ? say("fit-form/diameter") : say("fit-form/width");
  above(byId(id + row.name + "-height"), ".ut-try-field").hidden = one;
  return one;
}

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
  page.addEventListener("click", (event) => { if (target(event).closest("#ut-reset")) answer(id, place, out); });
  form.addEventListener("submit", (event) => { event.preventDefault(); });
  page.addEventListener("change", (event) => { if (target(event).closest(".ut-choose")) answer(id, place, out); });
  answer(id, place, out);
}

function set(id, length) { field(id).value = !length ? "" : length.text || length; }

/* The dimensions of a piece of gear, as typed, into the fields. */
function fill(id, rows, gear) {
  rows.forEach((row) => {
    const part = gear[row.name];
    if (row.ohms) { field(id + row.name).value = part && OHMS.indexOf(String(part.value)) >= 0 ? String(part.value) : ""; return; }
    if (!row.shape && !row.face && !row.bolts) { set(id + row.name, part); return; }
    if (row.shape) field(id + row.name + "-shape").value = part ? part.shape : "round";
    if (row.bolts) {
      field(id + "bolts-pattern").value = part ? part.pattern : "";
      field(id + "bolts-count").value = part ? part.count : 4;
    }
    set(id + row.name + "-width", part && (part.diameter || part.width));
    set(id + row.name + "-height", part && part.height);
    if (row.bolts) set(id + "bolts-angle", part && part.angle);
  });
}

/* A field's length or word, null where it is empty. What cannot be read is said beside it, and counts as a length that is not known. */
function read(id, wrong) {
  const input = field(id), said = byId(id + "-wrong"), text = input.value.trim();
  said.textContent = "";
  input.removeAttribute("aria-invalid");
  if (!text) return null;
  if (/^(unknown|none)$/i.test(text)) return text.toLowerCase();
  try { return lengths.read(text); } catch (error) {
    if (!(error instanceof lengths.Unread)) throw error;
    said.textContent = say("fit-form/wrong", { wrong: error.message, hint: error.hint });
    input.setAttribute("aria-invalid", "true");
    wrong.push(id);
    return UNREAD;
  }
}

function gather(id, rows, wrong) {
  const gear = { impedance: null };
  rows.forEach((row) => {
    if (row.ohms) { gear[row.name] = impedance(field(id + row.name).value); return; }
    if (!row.shape && !row.face && !row.bolts) { gear[row.name] = read(id + row.name, wrong); return; }
    const height = round(id, row) ? null : read(id + row.name + "-height", wrong), width = read(id + row.name + "-width", wrong);
    if (row.face) gear[row.name] = width || height || row.name === "body" ? { width, height } : null;
    if (row.shape) gear[row.name] = outline(field(id + row.name + "-shape").value, width, height);
    if (row.bolts) gear[row.name] = bolts(id, width, height, angle(id + "bolts-angle", wrong));
  });
  return gear;
}

function impedance(ohms) { return ohms ? { value: Number(ohms), step: 0, text: ohms + " ohm", shown: say("fit-speaker/ohms", { value: ohms }) } : null; }

function outline(shape, width, height) {
  if (!width && !height) return null;
  return shape === "round" ? { shape, diameter: width, width: null, height: null } : { shape, diameter: null, width, height };
}

/* An angle in degrees, null where the field is empty. */
function angle(id, wrong) {
  const input = field(id), said = byId(id + "-wrong"), text = input.value.trim();
  const found = /^([0-9]+)(?:\.([0-9]+))? ?(?:deg|°)$/.exec(text);
  said.textContent = "";
  input.removeAttribute("aria-invalid");
  if (!text || text === "unknown") return text || null;
  if (found) return { value: parseFloat(text), step: 0.5 / Math.pow(10, (found[2] || "").length), text, shown: number(text.replace(/ ?deg/, "°")) };
  said.textContent = say("fit-form/degrees");
  input.setAttribute("aria-invalid", "true");
  wrong.push(id);
  return UNREAD;
}

function bolts(id, width, height, angle) {
  const pattern = field(id + "bolts-pattern").value, count = Number(field(id + "bolts-count").value);
  if (!pattern) return null;
  return pattern === "circle" ? { pattern, count, diameter: width, width: null, height: null, angle } : { pattern, count, diameter: null, width, height, angle: null };
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

/* What the ranked list says of this receiver, or of one of which only the size is known; with its cars where they are not chosen. */
/**
 * @param {Form} place
 * @param {string} id
 */
function stops(place, id) {
  const car = chosenCar(), receiver = field(id + "from").value;
  return place.stops.filter((item) => item.receivers.indexOf(receiver) >= 0 && holds(item.clauses, car))
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
  const wrong = [], rows = KINDS[place.kind].fields;
  const gear = gather(id, rows, wrong), room = usual(id, place.kind, wrong), things = between(place);
  out.textContent = "";
  if (wrong.length) out.append(make("p", { text: say("fit-form/fields-unread", { count: wrong.length }) }));
  if (!typedSomething(id)) return;
  /** @type {(gear: any, opening: any, between: any, usual: any) => any} */
  const reckoned = KINDS[place.kind].reckoned; // by kind, as the opening and the fields of its form are
  const found = stopped(loaded(reckoned(gear, place.opening, things, room), gear, place), stops(place, id));
  show(out, found, place.notes.concat(unsure(found, things)));
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

function typedSomething(id) {
  return fields("input[id^='" + id + "']", page).some((field) => field.value.trim() && field.id.indexOf("-usual-") < 0);
}

function show(out, found, notes) {
  const word = found.kind === "fits-with" && found.to_get.length ? say("verdicts/to-get") : say(`verdicts/${found.kind}`);
  out.append(make("p", { "class": "ut-try-verdict ut-is-" + found.kind }, [make("b", { text: SIGNS[found.kind] + " " + word }), found.reason ? " " + found.reason : ""]));
  const body = make("tbody", {}, found.checks.map(row));
  out.append(make("table", { "class": "ut-table ut-checks" }, [make("thead", {}, [make("tr", {}, [make("th", { scope: "col", text: say("fit-form/check") }), make("th", { scope: "col", text: say("fit-form/numbers") })])]), body]));
  const said = found.notes.concat(notes);
  if (said.length) out.append(make("ul", { "class": "ut-notes" }, said.map((note) => make("li", { text: note }))));
  out.append(make("p", {}, [make("small", { text: list([say("fit-form/not-reckoned"), say("safety/maker-first")], "sentences") + "." })]));
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
  all(".ut-try", page).forEach((spot) => { build(spot, places[spot.dataset.opening]); });
}

window.undertrimFitForm = { start };
