/* What the page of a visit fetches from the shelf where a factory unit goes: what is in the way with the gear in stock, and how its kits are built up. */

import { known, page } from "./chosen.js";
import { all, byId } from "./elements.js";
import { forms } from "./gear-asked.js";
import { renew } from "./visit-shown.js";
import { blocker, kit } from "./with-stock-shown.js";
import { wantStock } from "./with-stock.js";

/** @import { StockVisit } from "published" */

const blockers = byId("ut-blockers"), kits = all("[data-kits]", page);

/** @param {StockVisit} found */
function show(found) {
  if (blockers) renew(blockers, ...found.blockers.map(blocker));
  kits.forEach((spot) => {
    const own = found.kits[spot.dataset.kits];
    if (own) renew(spot, ...own.map(kit));
  });
  return "";
}

/* Asks for it where a factory unit goes: gear in stock keeps what it did, and a kit may be built up. */
export function stockFor(jobs) {
  const openings = known.targets.filter((one) => !jobs.length || jobs.includes(one.id)).map((one) => one.opening);
  if (openings.some((opening) => opening in forms && forms[opening].joining !== null)) wantStock("", "plan", show);
}
