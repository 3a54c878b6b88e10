/* The form of a claim about gear in an opening: whether it went in, which size was in the way, what it met. */

import { add } from "./claims.js";
import { chosenOf, named, typed, who } from "./claim-who.js";
import { showClaims } from "./claims-list.js";
import { make } from "./elements.js";
import { say } from "./words.js";

/** @import { Claim } from "./claims.js" */
/** @import { Where } from "./tried.js" */
/** @typedef {{ gear: string, name: string, kind: string } & Where} Asked */

/* Which sizes of a kind may be in the way. */
const SIZES = { speaker: ["depth", "magnet", "basket", "flange", "bolts", "protrusion", "terminals"], receiver: ["body", "chassis_depth", "plug_room", "trim"], tweeter: ["mounts"], amplifier: ["size"] };

/** @type {Asked} */
let asked;
let spot = make("span", {});

const by = who(["seen", "measured", "told"]), hit = typed("hit");
const wrong = make("p", { class: "ut-try-wrong", role: "alert" }), title = make("h2", { id: "ut-tried-title", tabindex: "-1" }), kept = make("div", {});
const why = make("div", {});

function went() { return /** @type {HTMLInputElement | null} */ (form.querySelector("[name=went]:checked")); }
function showWhy() { why.hidden = !went() || went().value === "yes"; }
function pick(value) { return make("label", { class: "ut-pick" }, make("input", { type: "radio", name: "went", value, change: showWhy }), say(`tried-form/went-${value}`)); }

const form = /** @type {HTMLFormElement} */ (make("form", { novalidate: true, submit: take },
  make("fieldset", {}, make("legend", {}, say("tried-form/ask")), pick("yes"), pick("no")), why, wrong, ...by.rows,
  make("p", { class: "ut-report-do" }, make("button", { class: "ut-button", type: "submit" }, say("not-so/keep")), make("button", { class: "ut-button", type: "button", click: () => { dialog.close(); } }, say("bay/close")))));
const dialog = /** @type {HTMLDialogElement} */ (make("dialog", { class: "ut ut-report ut-claim", "aria-labelledby": "ut-tried-title", close: () => { dialog.remove(); } }, title, make("p", {}, say("not-so/about")), form, kept));
showClaims(kept);

function sizes() { return ["", ...(SIZES[asked.kind] || [])]; }

/** @param {Event} event */
function take(event) {
  event.preventDefault();
  const lacking = went() ? by.lacking() : { words: say("tried-form/wanted"), input: /** @type {HTMLInputElement} */ (form.querySelector("[name=went]")) };
  wrong.textContent = lacking ? lacking.words : "";
  if (lacking) {
    lacking.input.focus();
    return;
  }
  const says = went().value, size = /** @type {HTMLSelectElement} */ (spot), no = says === "no";
  add(/** @type {Claim} */ ({ gear: asked.gear, about: `gear/tried/${asked.vehicle}/${asked.opening}`, says, ...(no && size.value ? { size: size.value } : {}), ...(no && hit.value.trim() ? { hit: hit.value.trim() } : {}), ...by.said(asked.car) }));
  hit.value = by.note.value = "";
  kept.scrollIntoView({ block: "nearest" });
}

/** @param {Asked} what */
window.undertrimTried = (what) => {
  asked = what;
  spot = chosenOf("size", sizes(), (one) => say(`tried-form/size-${one || "unsaid"}`));
  why.replaceChildren(named(say("tried-form/size"), spot), named(say("tried-form/hit"), hit));
  title.textContent = say("tried-form/title", { gear: what.name, place: what.place });
  wrong.textContent = "";
  by.begin(true);
  showWhy();
  document.querySelector(".ut-vehicle, .ut-piece").append(dialog);
  dialog.showModal();
  title.focus();
};
