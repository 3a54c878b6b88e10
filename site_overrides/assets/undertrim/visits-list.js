/* The visits under way on this device, the last first, with how far each is: to go on with, to forget, and to take one up from a file. */

import { make, target } from "./elements.js";
import { topIn } from "./reading.js";
import { fromFile } from "./visit-passed.js";
import { begun, every, forget, keep, takeUp } from "./visits.js";
import { say, tag } from "./words.js";

/** @import { Kept } from "./visits.js" */

/**
 * @param {HTMLElement} spot where the list goes
 * @param {(kept: Kept) => boolean} shown which of them
 */
export function showVisits(spot, shown) {
  const status = make("p", { role: "status" });
  const list = make("ul", { class: "ut-kept" });
  const title = make("h2", {}, say("bay/under-way"));
  const again = () => {
    const found = every().filter((kept) => begun(kept) && shown(kept));
    list.replaceChildren(...found.map((kept) => line(kept, () => { gone(forget(kept.id)); })));
    title.hidden = !found.length && !status.textContent;
  };
  const gone = (kept) => {
    status.replaceChildren(say("bay/forgotten", { visit: called(kept) }), " ", make("button", { type: "button", class: "ut-button", click: () => {
      keep(kept);
      status.textContent = "";
      again();
    } }, say("bay/bring-back")));
    again();
  };
  const file = make("input", { type: "file", accept: ".json,application/json", change: async (event) => {
    const got = await fromFile(target(event).files[0]);
    status.textContent = got ? say("bay/taken-up", { visit: called(got) }) : say("bay/no-visit-in-it");
    again();
  } });
  spot.replaceChildren(title, list, status, make("details", { class: "ut-from-file" }, make("summary", {}, say("bay/from-file")), make("label", {}, say("bay/which-file"), " ", file)));
  again();
  window.addEventListener("storage", again);
  window.addEventListener("pageshow", again);
}

function called(kept) { return kept.name ? say("bay/called", { vehicle: kept.title, name: kept.name }) : kept.title; }

function line(kept, drop) {
  const done = Object.keys(kept.done).length, when = new Date(kept.changed);
  const link = make("a", { href: `${topIn(kept.language)}vehicles/${kept.vehicle}.html?${kept.text}`, click: () => { takeUp(kept); }, auxclick: () => { takeUp(kept); } },
    make("b", {}, called(kept)), make("span", {}, say("bay/so-far", { done, count: kept.steps, when: when.toLocaleString(tag(), { dateStyle: "short", timeStyle: "short" }) })));
  return make("li", {}, link, make("button", { type: "button", class: "ut-button", "aria-label": say("bay/forget-which", { visit: called(kept) }), click: drop }, say("bay/forget")));
}
