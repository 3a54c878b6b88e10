/* The forms of the calculators' page: reads what was typed, asks electrical-*.js, shows its answer with every number used. */

import * as choice from "./electrical-cable.js";
import { size, supply } from "./electrical-drop.js";
import { crossover, pad } from "./electrical-crossover.js";
import { readings } from "./electrical-fuses.js";
import { Refused, use } from "./electrical-numbers.js";
import * as sound from "./electrical-sound.js";
import { say } from "./words.js";

const page = document.querySelector(".ut-calculators");
use(JSON.parse(document.getElementById("ut-electrical").textContent));

class Incomplete extends Error {}

function typed(form, name) { return form.elements[name].value.trim(); }

function labelOf(form, name) { return form.elements[name].labels[0].textContent; }

function unitOf(form, name) {
  const choice = form.elements[name + "-unit"];
  return choice ? choice.selectedOptions[0] : form.elements[name].parentElement.querySelector(".ut-unit");
}

function toNumber(text, label) {
  if (!/^[-−+]?([0-9]+(\.[0-9]*)?|\.[0-9]+)$/.test(text)) {
    throw new Refused("calculators/no-number", { text, label });
  }
  return Number(text.replace("−", "-"));
}

function toSI(text, label, unit) {
  const value = toNumber(text, label);
  return unit ? value * Number(unit.dataset.scale) + Number(unit.dataset.offset) : value;
}

/* A field in SI units; undefined where it is empty or not shown. */
function maybe(form, name) {
  const text = typed(form, name);
  return text === "" || form.elements[name].closest("[hidden]") ? undefined : toSI(text, labelOf(form, name), unitOf(form, name));
}

function needed(form, name) {
  const value = maybe(form, name);
  if (value === undefined) throw new Incomplete(labelOf(form, name));
  return value;
}

function chosen(form, name) { return form.elements[name].value; }

function current(form) {
  const amps = maybe(form, "current");
  const watts = maybe(form, "power");
  if (amps !== undefined && watts !== undefined) throw new Refused("calculators/current-and-power", {});
  if (amps === undefined && watts === undefined) throw new Incomplete(say("calculators/current-or-power"));
  if (amps !== undefined) return { amps, answers: [] };
  const source = supply({ power: watts, efficiency: maybe(form, "efficiency"), voltage: maybe(form, "voltage") });
  return { amps: source.current, answers: [source] };
}

const WAYS = {
  same() { return null; },
  wire(form) { return needed(form, "back"); },
  body() { return "body"; },
};

function cable(form) {
  const source = current(form);
  const path = {
    current: source.amps, out: needed(form, "out"), back: WAYS[chosen(form, "way")](form), body: maybe(form, "body"),
    metal: chosen(form, "metal"), voltage: maybe(form, "voltage"), conductor: maybe(form, "conductor"),
  };
  const bears = chosen(form, "insulation");
  const wishes = {
    scheme: chosen(form, "scheme"), insulation: bears ? Number(bears) : undefined, place: chosen(form, "place"),
    limit: maybe(form, "limit"), fuse: maybe(form, "fuse"), share: maybe(form, "share"),
  };
  return [...source.answers, { ...choice.cable({ path, wishes }), scheme: wishes.scheme }];
}

const CORNERS = {
  frequency(value, load) { return sound.filterAt({ frequency: value, load }); },
  capacitance(value, load) { return sound.filterOfCapacitor({ capacitance: value, load }); },
  inductance(value, load) { return sound.filterOfCoil({ inductance: value, load }); },
};

function level(form) {
  if (typed(form, "decibels")) return sound.change({ decibels: needed(form, "decibels") });
  return sound.ratio({ voltage: needed(form, "voltage"), against: needed(form, "against") });
}

function delay(form) {
  const unit = unitOf(form, "distances");
  const label = labelOf(form, "distances");
  const texts = typed(form, "distances").split(/[\s;]+/).filter(Boolean);
  if (texts.length < 2) throw new Incomplete(say("calculators/two-distances"));
  return sound.delays({ distances: texts.map((text) => toSI(text, label, unit)), air: maybe(form, "air") });
}

function load(form) {
  const text = typed(form, "text");
  if (!text) throw new Incomplete(labelOf(form, "text"));
  return sound.arranged({ text, least: maybe(form, "least") });
}

function colour(form) {
  if (!chosen(form, "colour")) throw new Incomplete(labelOf(form, "colour"));
  return readings({ colour: chosen(form, "colour") });
}

const CALCULATORS = {
  cable,
  load,
  filter(form) { return CORNERS[unitOf(form, "value").dataset.kind](needed(form, "value"), needed(form, "load")); },
  crossover(form) { return crossover({ frequency: needed(form, "corner"), load: needed(form, "load"), alignment: chosen(form, "kind") }); },
  pad(form) { return pad({ decibels: needed(form, "decibels"), load: needed(form, "load"), power: maybe(form, "power") }); },
  gain(form) { return sound.gain({ power: needed(form, "power"), load: needed(form, "load") }); },
  level,
  delay,
  rest(form) { return sound.rest({ capacity: needed(form, "capacity"), current: needed(form, "current"), share: maybe(form, "share") }); },
  colour,
};

/* what is shown */

function element(tag, text, className) {
  const made = document.createElement(tag);
  made.textContent = text;
  if (className) made.className = className;
  return made;
}

function list(lines) {
  const made = document.createElement("ul");
  lines.forEach((line) => { made.appendChild(element("li", line)); });
  return made;
}

function conditionLine(scheme) {
  return (one) => {
    const found = one.size === null ? say("calculators/no-size") : say("calculators/or-thicker", { size: size(scheme, one.size).label });
    return say("calculators/condition", { condition: one.words, size: found });
  };
}

/* What a number is called; where it comes from stands beside it, unless it was given or computed. */
function numberLabel(one) {
  if (one.origin === "given" || one.origin === "computed") return one.label;
  return say("calculators/label-from", { label: one.label, origin: one.origin === "usual" ? say("calculators/usual") : one.origin });
}

function numbers(every) {
  const made = element("dl", "", "ut-facts");
  every.forEach((one) => {
    const row = document.createElement("div");
    row.appendChild(element("dt", numberLabel(one)));
    row.appendChild(element("dd", one.text));
    made.appendChild(row);
  });
  return made;
}

function shown(answer) {
  const parts = [element("p", answer.headline, "ut-headline")];
  if (answer.conditions) parts.push(list(answer.conditions.map(conditionLine(answer.scheme))));
  if (answer.notes.length) parts.push(list(answer.notes));
  const folded = document.createElement("details");
  folded.appendChild(element("summary", say("calculators/every-number")));
  folded.appendChild(numbers(answer.numbers));
  return parts.concat([folded]);
}

function refused(error) {
  if (error instanceof Refused) return [element("p", say("page/not-so", { what: error.message }), "ut-refused"), element("p", error.hint)];
  if (error instanceof Incomplete) return [element("p", say("calculators/still-needed", { what: error.message }))];
  throw error;
}

function answered(form) {
  try {
    return [].concat(CALCULATORS[form.dataset.calculator](form)).map(shown).flat();
  } catch (error) {
    return refused(error);
  }
}

function showFields(form) {
  if (!form.elements.way) return;
  const way = chosen(form, "way");
  form.elements.back.closest(".ut-field").hidden = way !== "wire";
  form.elements.body.closest(".ut-field").hidden = way !== "body";
  form.elements.efficiency.closest(".ut-field").hidden = !typed(form, "power");
}

function untouched(form) {
  const asked = form.querySelectorAll("input").length ? "input" : "select";
  return Array.from(form.querySelectorAll(asked)).every((one) => !one.value);
}

function update(form) {
  const output = form.querySelector("output");
  const open = output.querySelector("details[open]") !== null;
  showFields(form);
  output.hidden = untouched(form);
  output.replaceChildren(...(output.hidden ? [] : answered(form)));
  output.querySelectorAll("details").forEach((one) => { one.open = open; });
}

page.classList.add("ut-live");
page.querySelectorAll("form").forEach((form) => {
  form.closest("section").hidden = false;
  form.addEventListener("submit", (event) => { event.preventDefault(); });
  form.addEventListener("input", () => { update(form); });
  update(form);
});
