/* What the page of the wiring fetches from the shelf: the joints with gear in stock, and what that keeps. */

import { page } from "./chosen.js";
import { byId } from "./elements.js";
import { duty, joint } from "./joint-shown.js";
import { renew } from "./visit-shown.js";
import { wireSymbols } from "./wire-picture.js";
import { wantStock } from "./with-stock.js";
import { say } from "./words.js";

/** @import { StockWiring } from "published" */

const duties = byId("ut-duties"), joints = byId("ut-joints");

/* An address may lead to a joint, which was not there when the page was opened. */
function findPlace() {
  const found = location.hash && joints.querySelector("#" + CSS.escape(decodeURIComponent(location.hash.slice(1))));
  if (found) found.scrollIntoView();
}

/** @param {StockWiring} found */
function show(found) {
  if (duties) renew(duties, ...found.duties.map(duty));
  page.append(wireSymbols(found.colours));
  renew(joints, ...found.joints.map((one) => joint(one, found.colours)));
  setTimeout(findPlace); // when the visit left out what does not concern it
  return say(found.joints.length ? "vehicle-page/joints-how" : "with-stock/no-leads");
}

export function stockOfWiring() { wantStock(".wiring", "wiring", show); }
