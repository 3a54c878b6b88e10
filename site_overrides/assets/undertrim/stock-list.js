/* What of the stock fits each opening: ranked on the device when somebody opens the list, for the car and the gear of the visit. */

import { chosenCar, known, page } from "./chosen.js";
import { all, make } from "./elements.js";
import { askedOf, command, forms, kindsFor } from "./gear-asked.js";
import { open, ranked, use } from "./fit-place.js";
import { checks, notes } from "./fit-shown.js";
import { SIGNS } from "./fit-signs.js";
import { verdictWords } from "./fit-verdict.js";
import { ask } from "./shelf.js";
import { tryIt } from "./tried.js";
import { seen } from "./tried-seen.js";
import { list, say } from "./words.js";

/** @import { Shelf } from "published" */

function entry(row, place, opening, name) {
  const written = known.words.written[opening], told = seen(row.gear, known.address, written, row.fit.kind);
  const reason = row.cars ? say("gear-choice/worst-in", { said: row.fit.reason, cars: row.cars }) : row.fit.reason;
  return make("li", {}, make("details", { "class": "ut-verdict ut-is-" + row.fit.kind, "data-gear": row.gear.id },
    make("summary", {}, make("span", { "class": "ut-word" }, make("span", { "aria-hidden": "true" }, SIGNS[row.fit.kind]), " " + verdictWords(row.fit)), " ",
      make("span", { "class": "ut-what" }, make("b", {}, row.gear.name), " ", make("small", {}, list([reason, ...told].filter(Boolean), "sentences")))),
    ...told.map((one) => make("p", { class: "ut-tried" }, one)), checks(row.fit), notes(row.fit.notes.concat(place.notes, row.fit.alters, row.gear.doubts)),
    make("p", {}, tryIt(row.gear, { vehicle: known.address, opening: written, place: name, car: chosenCar() }))
  ));
}

function counted(rows) {
  const numbers = new Map();
  rows.forEach((row) => {
    const word = row.fit.kind === "fits-with" && row.fit.to_get.length ? "to-get" : row.fit.kind;
    numbers.set(word, (numbers.get(word) || 0) + 1);
  });
  return list([...numbers].map(([word, count]) => say(`verdicts/number-${word}`, { count })), "semicolon");
}

/**
 * @param {HTMLElement} spot
 * @param {Shelf} shelf
 */
function show(spot, shelf) {
  const opening = spot.dataset.opening, place = forms[opening], out = spot.lastElementChild;
  const left = shelf.left_out.filter((item) => item.kind === known.words.takes[opening]).map((item) => say("fit-shown/not-offered", { name: item.id }));
  const how = make("p", {}, make("small", {}, say("gear-choice/fits-how", { command: command("fit") })));
  const asked = askedOf(opening, shelf), rows = ranked(asked);
  const none = open(asked).free.length ? say("fit-shown/none-page", { kind: say(`gear-kinds/${place.gear}`) }) : say("gear-choice/closed");
  out.replaceChildren(...(rows.length ? [make("p", {}, make("b", {}, say("fit-shown/in-stock")), " " + counted(rows) + "."), make("ul", { "class": "ut-fits" }, ...rows.map((row) => entry(row, place, opening, spot.dataset.name)))]
    : [make("p", {}, none)]), notes(left), how);
}

/** @param {HTMLElement} spot */
function fill(spot) {
  const out = spot.lastElementChild;
  if (!out.children.length) out.replaceChildren(make("p", { role: "status" }, say("gear-choice/coming")));
  const openings = Object.keys(known.words.takes);
  ask(kindsFor(openings)).then((shelf) => { use(shelf); show(spot, shelf); },
    () => { out.replaceChildren(make("p", { role: "status" }, say("gear-choice/missing", { command: command("fit") }))); });
}

/** @type {HTMLDetailsElement[]} */
const spots = /** @type {any} */ (all(".ut-stock", page)); // before a visit takes any of them out of the document
spots.forEach((spot) => {
  spot.append(make("summary", {}, say("fit-shown/title")), make("div"));
  spot.addEventListener("toggle", () => { if (spot.open) fill(spot); });
});
page.addEventListener("ut-visit", () => { spots.filter((spot) => spot.open).forEach(fill); });
