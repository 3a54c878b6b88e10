/* What stands in the fields of the form beside an opening: read from them as gear, and filled in from gear. */

import { above, byId, field, fields } from "./elements.js";
import { OHMS } from "./fit-form-fields.js";
import * as lengths from "./lengths.js";
import { number, say } from "./words.js";

const UNREAD = "unread";

/* Whether a part is measured by one diameter; its fields are then one, and called so. */
function round(id, row) {
  if (row.face) return false;
  const said = field(id + row.name + (row.shape ? "-shape" : "-pattern")).value, one = said !== "oval" && said !== "rectangle";
  document.querySelector("label[for='" + id + row.name + "-width']").textContent = one ? say("fit-form/diameter") : say("fit-form/width");
  above(byId(id + row.name + "-height"), ".ut-try-field").hidden = one;
  return one;
}

function set(id, length) { field(id).value = !length ? "" : length.text || length; }

/* The dimensions of a piece of gear, as typed, into the fields. */
export function fill(id, rows, gear) {
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
export function read(id, wrong) {
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

export function gather(id, rows, wrong) {
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

function impedance(ohms) { return ohms ? { value: Number(ohms), step: 0, text: ohms + " ohm", shown: say("fit-speaker/ohms", { value: ohms }), least: false } : null; }

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
  if (found) return { value: parseFloat(text), step: 0.5 / Math.pow(10, (found[2] || "").length), text, shown: number(text.replace(/ ?deg/, "°")), least: false };
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

export function typedSomething(id) {
  return fields("input[id^='" + id + "']").some((field) => field.value.trim() && field.id.indexOf("-usual-") < 0);
}
