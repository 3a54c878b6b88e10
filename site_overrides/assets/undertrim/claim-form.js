/* The form of a claim: which fact, what is so instead, how that is known. */

import { add, remember, whoBefore } from "./claims.js";
import { showClaims } from "./claims-list.js";
import { make } from "./elements.js";
import { say } from "./words.js";

/** @import { Claimable, ClaimableFact, ClaimableThing } from "published" */
/** @import { Claim } from "./claims.js" */
/** @typedef {{ facts: Claimable, about: string, car: Record<string, string> }} Asked */

const HOWS = ["measured", "seen", "maker", "told"];

/** @type {Asked} */
let asked;

function field(label, input) { return make("label", { class: "ut-name" }, label, input); }
function typed(name) { return /** @type {HTMLInputElement} */ (make("input", { type: "text", name, maxlength: "300", autocomplete: "off" })); }
function picked(value, words) { return make("label", { class: "ut-pick" }, make("input", { type: "radio", name: "claim-is", value, checked: value === "says", change: showValue }), words); }

const which = /** @type {HTMLSelectElement} */ (make("select", { name: "about", change: showFact }));
const stands = make("p", { class: "ut-claim-stands", role: "status" });
const says = typed("says"), by = typed("by"), tool = typed("with"), year = typed("year");
const SIDES = ["unknown", "left", "right"];
const side = /** @type {HTMLSelectElement} */ (make("select", { name: "side" }, ...SIDES.map((one) => make("option", { value: one }, say(`not-so/side-${one}`)))));
const note = /** @type {HTMLTextAreaElement} */ (make("textarea", { rows: "2", name: "note", maxlength: "500" }));
const how = /** @type {HTMLSelectElement} */ (make("select", { name: "how" }, ...HOWS.map((one) => make("option", { value: one }, say(`not-so/how-${one}`)))));
const value = field(say("not-so/instead"), says);
const wrong = make("p", { class: "ut-try-wrong", role: "alert" });
const kept = make("div", {});
const form = /** @type {HTMLFormElement} */ (make("form", { novalidate: true, submit: take },
  field(say("not-so/which"), which), stands,
  make("fieldset", {}, make("legend", {}, say("not-so/what-is-so")), picked("says", say("not-so/it-is")), value, picked("none", say("not-so/found-none")), picked("not-so", say("not-so/found-not-so")), picked("cannot-tell", say("not-so/found-cannot-tell"))),
  wrong, field(say("not-so/how"), how), field(say("not-so/with"), tool), field(say("not-so/year"), year), field(say("not-so/side"), side), field(say("not-so/by"), by), field(say("not-so/note"), note),
  make("p", { class: "ut-report-do" }, make("button", { class: "ut-button", type: "submit" }, say("not-so/keep")), make("button", { class: "ut-button", type: "button", click: () => { dialog.close(); } }, say("bay/close")))));
const dialog = /** @type {HTMLDialogElement} */ (make("dialog", { class: "ut ut-report ut-claim", "aria-labelledby": "ut-claim-title", close: () => { dialog.remove(); } },
  make("h2", { id: "ut-claim-title", tabindex: "-1" }, say("not-so/not-so")), make("p", {}, say("not-so/about")), form, kept));
showClaims(kept);

function answer() { return /** @type {HTMLInputElement} */ (form.querySelector("[name=claim-is]:checked")).value; }
function showValue() { value.hidden = answer() !== "says"; }

/** @param {ClaimableThing} thing @param {ClaimableFact} fact */
function addressOf(thing, fact) { return fact[0] ? `${thing.about}/${fact[0]}` : thing.about; }

function standing(about) {
  for (const thing of asked.facts.things) {
    const fact = thing.facts.find((one) => addressOf(thing, one) === about);
    if (fact) return fact[2];
  }
  return "";
}

/* The fact as it stands, with its address. */
function showFact() {
  stands.replaceChildren(say("not-so/stands", { value: standing(which.value) }), " ", make("code", {}, which.value));
}

/* The facts of the thing that was asked about; of all where it has none of its own. */
function options() {
  const own = asked.facts.things.filter((thing) => thing.about === asked.about);
  return (own.length ? own : asked.facts.things).map((thing) => make("optgroup", { label: thing.name },
    ...thing.facts.map((fact) => make("option", { value: addressOf(thing, fact) }, say("not-so/fact", { label: asked.facts.labels[fact[1]], value: fact[2].slice(0, 60) })))));
}

function today() {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}

/* What is not filled in is left out. @returns {Claim} */
function claim() {
  const is = answer() === "says" ? { says: says.value.trim() } : { found: answer() };
  const more = { was: standing(which.value).slice(0, 300), with: tool.value.trim(), note: note.value.trim() };
  const answered = Object.keys(asked.car).length ? { is: asked.car } : {};
  const car = { year: /^[0-9]{4}$/.test(year.value.trim()) ? Number(year.value) : "unknown", side: side.value, ...answered };
  return /** @type {Claim} */ ({ vehicle: asked.facts.vehicle, about: which.value, ...is, how: how.value, on: today(), by: by.value.trim(), car, ...Object.fromEntries(Object.entries(more).filter(([, text]) => text)) });
}

/**
 * What is still wanted, with the field for it.
 * @returns {{ words: string, input: HTMLInputElement } | null}
 */
function lacking() {
  if (answer() === "says" && !says.value.trim()) return { words: say("not-so/value-wanted"), input: says };
  if (how.value === "measured" && !tool.value.trim()) return { words: say("not-so/with-wanted"), input: tool };
  return by.value.trim() ? null : { words: say("not-so/by-wanted"), input: by };
}

/** @param {Event} event */
function take(event) {
  event.preventDefault();
  const wanted = lacking();
  if (wanted) {
    wrong.textContent = wanted.words;
    wanted.input.focus();
    return;
  }
  wrong.textContent = "";
  remember(by.value.trim());
  add(claim());
  says.value = note.value = "";
  kept.scrollIntoView({ block: "nearest" });
}

/** @param {Asked} what */
window.undertrimClaim = (what) => {
  asked = what;
  which.replaceChildren(...options());
  by.value = by.value || whoBefore();
  wrong.textContent = "";
  showFact();
  showValue();
  document.querySelector(".ut-vehicle").append(dialog);
  dialog.showModal();
  /** @type {HTMLElement} */ (dialog.querySelector("h2")).focus();
};
