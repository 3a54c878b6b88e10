/* The way to say of gear in an opening whether it went in. */

import { make } from "./elements.js";
import { load } from "./shelf.js";
import { say } from "./words.js";

/** @typedef {{ vehicle: string, opening: string, place: string, car: Record<string, string> }} Where `opening` is the id that it is written under, `place` its name */

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
