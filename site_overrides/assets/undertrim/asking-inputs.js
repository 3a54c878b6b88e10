/* What an answer is typed or touched in, by its form. Each knows what it would say as a record types it, and what is wrong with that. */

import { inputOfColour } from "./asking-colour.js";
import { all as found, make } from "./elements.js";
import { inputOfPin } from "./asking-pin.js";
import { inputOfQuantity } from "./asking-quantity.js";
import { say } from "./words.js";

/** @import { Asked, AskedField } from "published" */

/**
 * `says` is the value as typed in a record, empty for none; `wrong` is a sentence, empty where nothing is. `clear` takes what was answered away.
 * @typedef {{ node: HTMLElement, says: () => string, wrong: () => string, clear: () => void }} Input
 */

/* The longest line that a record takes. */
const LONGEST = 120;
let many = 0;

/* A name for radios that belong together, on a page where a form is made again and again. */
export function groupName() {
  many += 1;
  return `asked-${many}`;
}

/**
 * Choices one below the other, of which one counts.
 * @param {{ word: string, says: string, tell?: string }[]} choices
 * @param {string} said
 * @param {"radio" | "checkbox"} type
 */
export function picks(choices, said, type = "radio") {
  const name = groupName(), before = said.split(", ");
  const node = make("div", { class: "ut-asked-picks" }, ...choices.map(({ word, says, tell }) =>
    make("label", { class: "ut-pick" }, make("input", { type, name, value: word, checked: before.includes(word) }), make("span", {}, says, tell ? make("small", {}, tell) : null))));
  const boxes = /** @type {HTMLInputElement[]} */ (found("input", node));
  const says = () => boxes.filter((box) => box.checked).map((box) => box.value).join(", ");
  return { node, says, wrong: () => "", clear: () => { boxes.forEach((box) => { box.checked = false; }); } };
}

/** @param {string} label @param {string} said @param {Record<string, string>} given @param {(text: string) => string} check */
export function line(label, said, given, check) {
  const input = /** @type {HTMLInputElement} */ (make("input", { type: "text", autocomplete: "off", value: said, "aria-label": label, ...given }));
  const says = () => input.value.trim().replace(/\s+/g, " ");
  return { node: input, says, wrong: () => says() && check(says()), clear: () => { input.value = ""; } };
}

function short(text) { return text.length > LONGEST ? say("asked/too-long", { count: LONGEST }) : ""; }
function whole(text) { return /^[0-9]{1,6}$/.test(text) ? "" : say("asked/not-whole"); }

/**
 * The input of a field that is no choice of one word, with what was answered before in it.
 * @param {AskedField} field
 * @param {string} said
 * @param {Asked} asked
 * @returns {Input}
 */
export function inputOf(field, said, asked) {
  switch (field.form) {
    case "quantity": return inputOfQuantity(field, said);
    case "choices": return picks(field.choices || [], said, "checkbox");
    case "colour": return inputOfColour(asked.colours || [], said);
    case "pin": return inputOfPin(asked.plugs || [], said);
    case "number": return line(field.title, said, { inputmode: "numeric" }, whole);
    case "drive": return line(field.title, said, { placeholder: say("asked/drive-hint") }, short);
    default: return line(field.title, said, {}, short);
  }
}
