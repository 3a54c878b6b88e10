/* The fields of the form beside an opening, as they stand before anything is typed: one group for each dimension of the gear. */

import { make } from "./elements.js";
import { say } from "./words.js";

const MOST_BOLTS = 16;

/* One length with its label and the place for what is wrong with it. */
export function lengthField(id, label, placeholder) {
  return make("div", { "class": "ut-try-field" },
    make("label", { "for": id }, label),
    make("input", { id, type: "text", autocomplete: "off", placeholder: placeholder || say("fit-form/example"), "aria-describedby": id + "-wrong" }),
    make("small", { id: id + "-wrong", "class": "ut-try-wrong", role: "alert" })
  );
}

export function pick(id, label, choices) {
  return make("div", { "class": "ut-try-field" },
    make("label", { "for": id }, label),
    make("select", { id }, ...choices.map((choice) => make("option", { value: choice[0] }, choice[1])))
  );
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

export const OHMS = ["1", "2", "3", "4", "6", "8", "16"];

export function group(id, row) {
  if (row.ohms) return pick(id + row.name, say(row.label), [unknown()].concat(OHMS.map((one) => [one, say("fit-speaker/ohms", { value: one })])));
  if (!row.shape && !row.face && !row.bolts) return lengthField(id + row.name, say(row.label));
  const inside = row.shape ? [pick(id + row.name + "-shape", say("fit-form/shape"), shapes(SHAPES))]
    : row.bolts ? [pick(id + "bolts-pattern", say("fit-form/pattern"), [unknown()].concat(shapes(PATTERNS))), pick(id + "bolts-count", say("fit-form/count"), counts())]
      : [];
  inside.push(lengthField(id + row.name + "-width", say("fit-form/width")), lengthField(id + row.name + "-height", say("fit-form/height")));
  if (row.bolts) inside.push(lengthField(id + "bolts-angle", say("fit-form/angle"), "45 deg"));
  return make("fieldset", {}, make("legend", {}, say(row.label)), ...inside);
}
