/* The form of a claim: which fact, what is so instead, how that is known. */

import { add } from "./claims.js";
import { named as field, typed, who } from "./claim-who.js";
import { showClaims } from "./claims-list.js";
import { make } from "./elements.js";
import { say } from "./words.js";

/** @import { Claimable, ClaimableFact, ClaimableThing } from "published" */
/** @import { Claim } from "./claims.js" */
/** @typedef {{ facts: Claimable, about: string, car: Record<string, string> }} Asked */

const HOWS = ["measured", "seen", "maker", "told"];

/** @type {Asked} */
let asked;

function picked(value, words) { return make("label", { class: "ut-pick" }, make("input", { type: "radio", name: "claim-is", value, checked: value === "says", change: showValue }), words); }

const which = /** @type {HTMLSelectElement} */ (make("select", { name: "about", change: showFact }));
const stands = make("p", { class: "ut-claim-stands", role: "status" });
const says = typed("says"), by = who(HOWS);
const value = field(say("not-so/instead"), says);
const wrong = make("p", { class: "ut-try-wrong", role: "alert" });
const kept = make("div", {}), title = make("h2", { id: "ut-claim-title", tabindex: "-1" });
const form = /** @type {HTMLFormElement} */ (make("form", { novalidate: true, submit: take },
  field(say("not-so/which"), which), stands,
  make("fieldset", {}, make("legend", {}, say("not-so/what-is-so")), picked("says", say("not-so/it-is")), value, picked("none", say("not-so/found-none")), picked("not-so", say("not-so/found-not-so")), picked("cannot-tell", say("not-so/found-cannot-tell"))),
  wrong, ...by.rows,
  make("p", { class: "ut-report-do" }, make("button", { class: "ut-button", type: "submit" }, say("not-so/keep")), make("button", { class: "ut-button", type: "button", click: () => { dialog.close(); } }, say("bay/close")))));
const dialog = /** @type {HTMLDialogElement} */ (make("dialog", { class: "ut ut-report ut-claim", "aria-labelledby": "ut-claim-title", close: () => { dialog.remove(); } },
  title, make("p", {}, say("not-so/about")), form, kept));
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

/* What is not filled in is left out. @returns {Claim} */
function claim() {
  const is = answer() === "says" ? { says: says.value.trim() } : { found: answer() };
  const was = standing(which.value).slice(0, 300), { vehicle, gear } = asked.facts;
  return /** @type {Claim} */ ({ ...(gear ? { gear } : { vehicle }), about: which.value, ...is, ...(was ? { was } : {}), ...by.said(gear ? null : asked.car) });
}

/**
 * What is still wanted, with the field for it.
 * @returns {{ words: string, input: HTMLInputElement } | null}
 */
function lacking() {
  if (answer() === "says" && !says.value.trim()) return { words: say("not-so/value-wanted"), input: says };
  return by.lacking();
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
  add(claim());
  says.value = by.note.value = "";
  kept.scrollIntoView({ block: "nearest" });
}

/** @param {Asked} what */
window.undertrimClaim = (what) => {
  asked = what;
  which.replaceChildren(...options());
  title.textContent = say(what.facts.gear ? "not-so/gear-not-so" : "not-so/not-so");
  by.begin(!what.facts.gear);
  wrong.textContent = "";
  showFact();
  showValue();
  document.querySelector(".ut-vehicle, .ut-piece").append(dialog);
  dialog.showModal();
  /** @type {HTMLElement} */ (dialog.querySelector("h2")).focus();
};
