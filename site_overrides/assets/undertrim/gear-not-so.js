/* "A size of it is not so": a claim about the record of a piece of gear. Its facts stand in the page; the form comes when somebody wants it. */

import { byId, make } from "./elements.js";
import { load } from "./shelf.js";
import { say } from "./words.js";

const spot = byId("ut-gear-facts"), status = make("span", { role: "status" });

async function open() {
  status.textContent = say("page/keep-working");
  try {
    await load("assets/undertrim/claim-form.js");
    status.textContent = "";
    window.undertrimClaim({ facts: JSON.parse(spot.textContent), about: "gear", car: {} });
  } catch (error) { status.textContent = say("not-so/not-here"); }
}

if (spot) spot.before(make("p", { class: "ut-not-so" }, make("button", { type: "button", class: "ut-button", click: open }, say("not-so/gear-not-so")), " ", status));
