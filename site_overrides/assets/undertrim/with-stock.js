/* What follows from a vehicle and gear in stock is not in its pages: they hold whatever is in stock. It comes from the shelf, in a file for each vehicle,
   when a visit wants it, and takes the place of what the pages say without it. Where it does not come, that is said, and what stands there is still true. */

import { choose, chosen, everythingShown, known, page } from "./chosen.js";
import { all, byId, make } from "./elements.js";
import { command } from "./gear-asked.js";
import { askVehicle } from "./shelf.js";
import { renew } from "./visit-shown.js";
import { wireSymbols } from "./wire-picture.js";
import { blocker, duty, joint, kit } from "./with-stock-shown.js";
import { say } from "./words.js";

/** @import { WithStock } from "published" */

const said = byId("ut-stock-said"), blockers = byId("ut-blockers"), duties = byId("ut-duties"), joints = byId("ut-joints");
const kits = all("[data-kits]", page);
let asked = false;

/** @param {WithStock} found */
function show(found) {
  if (blockers) renew(blockers, ...found.blockers.map(blocker));
  if (duties) renew(duties, ...found.duties.map(duty));
  if (joints) {
    page.append(wireSymbols(found.colours));
    renew(joints, ...found.joints.map((one) => joint(one, found.colours)));
  }
  kits.forEach((spot) => {
    const own = found.kits[spot.dataset.kits];
    if (own) renew(spot, ...own.map(kit));
  });
  said.hidden = !joints;
  said.textContent = joints ? say(found.joints.length ? "vehicle-page/joints-how" : "with-stock/no-leads") : "";
  choose(chosen(), everythingShown());
  document.dispatchEvent(new CustomEvent("ut-stock"));
}

/* An address may lead to a joint, which was not there when the page was opened. */
function findPlace() {
  const found = joints && location.hash && joints.querySelector("#" + CSS.escape(decodeURIComponent(location.hash.slice(1))));
  if (found) found.scrollIntoView();
}

/**
 * To be called whenever a page shows what hangs on the stock; it is asked once, and again where it did not come.
 * @param {string} verb the command that says the same
 */
export async function wantStock(verb) {
  if (asked || !said) return;
  asked = true;
  try {
    show(await askVehicle(known.address));
    findPlace();
  } catch (error) {
    asked = false;
    said.hidden = false;
    said.replaceChildren(make("b", {}, say("with-stock/missing", { command: command(verb) })));
  }
}
