/* What is done with a visit as a whole: its name, handing it over, its report, and the other visits to this vehicle. */

import { known } from "./chosen.js";
import { byId, make } from "./elements.js";
import { keep, kept } from "./visit-kept.js";
import { addressOf, fileName, save } from "./visit-passed.js";
import { openReport } from "./visit-report.js";
import { showVisits } from "./visits-list.js";
import { say } from "./words.js";

const spot = byId("ut-desk");
const handed = make("div", { class: "ut-handed", role: "status" });
const name = /** @type {HTMLInputElement} */ (make("input", { type: "text", maxlength: "60", placeholder: say("bay/name-example"), change: () => { keep((one) => { one.name = name.value.trim(); }); } }));
const others = make("div", {});

/** @type {string[]} */
let numbers = [];

async function handOver() {
  const address = await addressOf(kept());
  const way = make("input", { type: "text", readonly: true, value: address, "aria-label": say("bay/its-address"), focus: () => { /** @type {HTMLInputElement} */ (way).select(); } });
  const share = () => navigator.share({ title: kept().title, url: address }).catch(() => { /* thought better of */ });
  handed.replaceChildren(...address ? [make("p", {}, say("bay/hand-over-address")), way] : [make("p", {}, say("bay/hand-over-file"))],
    make("p", { class: "ut-report-do" },
      ...address && "share" in navigator ? [make("button", { type: "button", class: "ut-button", click: share }, say("bay/share"))] : [],
      make("button", { type: "button", class: "ut-button", click: () => { save(fileName(kept(), ".json"), "application/json", JSON.stringify(kept())); } }, say("bay/save-visit"))));
}

/* What is folded away is not in the document before somebody opens it. */
function fill() {
  if (handed.isConnected) return;
  spot.append(make("label", { class: "ut-name" }, say("bay/name"), name),
    make("p", { class: "ut-report-do" },
      make("button", { type: "button", class: "ut-button", click: () => { openReport(numbers); } }, say("bay/report")),
      make("button", { type: "button", class: "ut-button", click: handOver }, say("bay/hand-over"))), handed, others);
  showVisits(others, (one) => one.vehicle === known.address && one.id !== kept().id);
}

spot.append(make("summary", {}, say("bay/this-visit")));
spot.addEventListener("toggle", fill);

/** @param {string[]} steps the steps of the visit, by number */
export function showDesk(steps) {
  numbers = steps;
  spot.hidden = !steps.length;
  if (document.activeElement !== name) name.value = kept().name;
}
