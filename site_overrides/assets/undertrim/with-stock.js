/* What follows from a vehicle and gear in stock is not in its pages: they hold whatever is in stock. It comes from the shelf, in files for each vehicle,
   when a visit wants it, and takes the place of what the pages say without it. Where it does not come, that is said, and what stands there is still true. */

import { choose, chosen, everythingShown, known } from "./chosen.js";
import { byId, make } from "./elements.js";
import { command } from "./gear-asked.js";
import { askVehicle } from "./shelf.js";
import { say } from "./words.js";

const said = byId("ut-stock-said");
let asked = false;

/**
 * To be called whenever a page shows what hangs on the stock; it is asked once, and again where it did not come.
 * @param {string} view the page that asks, by what stands behind the address of the vehicle
 * @param {string} verb the command that says the same
 * @param {(found: any) => string} show puts what came in its place, and gives what is said of it; nothing where nothing is to be said
 */
export async function wantStock(view, verb, show) {
  if (asked || !said) return;
  asked = true;
  try {
    said.textContent = show(await askVehicle(known.address + view));
    said.hidden = !said.textContent;
    choose(chosen(), everythingShown());
    document.dispatchEvent(new CustomEvent("ut-stock"));
  } catch (error) {
    asked = false;
    said.hidden = false;
    said.replaceChildren(make("b", {}, say("with-stock/missing", { command: command(verb) })));
  }
}
