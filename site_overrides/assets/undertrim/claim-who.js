/* Who says something, how it is known, and at which car: the same fields under each form of a claim. */

import { remember, whoBefore } from "./claims.js";
import { make } from "./elements.js";
import { say } from "./words.js";

const SIDES = ["unknown", "left", "right"];

export function named(label, input) { return make("label", { class: "ut-name" }, label, input); }
export function typed(name) { return /** @type {HTMLInputElement} */ (make("input", { type: "text", name, maxlength: "300", autocomplete: "off" })); }

/** @param {string} name @param {string[]} values @param {(value: string) => string} words */
export function chosenOf(name, values, words) {
  return /** @type {HTMLSelectElement} */ (make("select", { name }, ...values.map((one) => make("option", { value: one }, words(one)))));
}

function today() {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}

/** @param {string[]} hows in which ways it may be known */
export function who(hows) {
  const by = typed("by"), tool = typed("with"), year = typed("year"), side = chosenOf("side", SIDES, (one) => say(`not-so/side-${one}`));
  const note = /** @type {HTMLTextAreaElement} */ (make("textarea", { rows: "2", name: "note", maxlength: "500" })), how = chosenOf("how", hows, (one) => say(`not-so/how-${one}`));
  const car = [named(say("not-so/year"), year), named(say("not-so/side"), side)];
  const rows = [named(say("not-so/how"), how), ...(hows.includes("measured") ? [named(say("not-so/with"), tool)] : []), ...car, named(say("not-so/by"), by), named(say("not-so/note"), note)];

  /* What of it is still wanted, with the field for it. */
  function lacking() {
    if (how.value === "measured" && !tool.value.trim()) return { words: say("not-so/with-wanted"), input: tool };
    return by.value.trim() ? null : { words: say("not-so/by-wanted"), input: by };
  }

  /** What is not filled in is left out. @param {Record<string, string> | null} is what is known of the car; null where it is about no car */
  function said(is) {
    const more = { with: tool.value.trim(), note: note.value.trim() }, kept = Object.fromEntries(Object.entries(more).filter(([, text]) => text));
    const at = { year: /^[0-9]{4}$/.test(year.value.trim()) ? Number(year.value) : "unknown", side: side.value, ...(is && Object.keys(is).length ? { is } : {}) };
    remember(by.value.trim());
    return { how: how.value, on: today(), by: by.value.trim(), ...(is ? { car: at } : {}), ...kept };
  }

  /* A form that is opened again. @param {boolean} atCar */
  function begin(atCar) {
    by.value = by.value || whoBefore();
    note.value = "";
    car.forEach((row) => { row.hidden = !atCar; });
  }
  return { rows, lacking, said, begin, note };
}
