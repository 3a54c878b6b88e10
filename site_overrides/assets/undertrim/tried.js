/* What people saw who tried gear in an opening, beside its verdict, and the way to say what one saw oneself. */

import { make } from "./elements.js";
import { load } from "./shelf.js";
import { say } from "./words.js";

/** @import { ShelfGear } from "published" */
/** @typedef {{ vehicle: string, opening: string, place: string, car: Record<string, string> }} Where `opening` is the id that it is written under, `place` its name */

/* The verdicts that a look says the opposite of, as derive/fit/tried.py has them. */
const AGAINST = { no: ["fits", "fits-with"], yes: ["does-not-fit"] };

/**
 * What was seen there, each beside a verdict of this kind.
 * @param {ShelfGear} gear
 * @param {string} vehicle
 * @param {string} opening
 * @param {string} kind
 */
export function seen(gear, vehicle, opening, kind) {
  const there = gear.tried.filter((one) => one.vehicle === vehicle && one.opening === opening);
  return there.map((one) => say(AGAINST[one.went_in].includes(kind) ? "tried/against" : "tried/seen", { said: one.said }));
}

/**
 * A button that asks for what one saw.
 * @param {{ id: string, name: string, kind: string }} gear
 * @param {Where} where
 */
export function tryIt({ id, name, kind }, where) {
  const status = make("span", { role: "status" });
  const open = async () => {
    status.textContent = say("page/keep-working");
    try {
      await load("assets/undertrim/tried-form.js");
      status.textContent = "";
      window.undertrimTried({ gear: id, name, kind, ...where });
    } catch (error) { status.textContent = say("not-so/not-here"); }
  };
  return make("span", { class: "ut-tried-it" }, make("button", { type: "button", class: "ut-button", click: open, "aria-label": say("tried-form/tried-this", { gear: name, place: where.place }) }, say("tried-form/tried")), " ", status);
}
