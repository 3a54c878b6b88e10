/* How a speaker sits on what holds it: through the hole, over it, on the panel, as `derive/fit/seating.py` has it. */

import { matchBolts } from "./fit-bolts.js";
import { changed, gap, known, uncertain, untold } from "./fit-margins.js";
import { contain, outline, posed, rectangle } from "./fit-outlines.js";
import { both } from "./lengths.js";

export function seated(speaker, hold, usual, turned) {
  const flange = outline("flange", speaker.flange);
  return [].concat(
    through(speaker, hold, turned),
    covered(flange, hold, usual, turned),
    lying("Flange", flange, hold, turned),
    matchBolts("bolts", speaker.bolts, hold.bolts, usual.bolts, hold.what, { turned, free: allRound([speaker.basket, speaker.flange]) }));
}

export function through(speaker, hold, turned) {
  return contain("hole", "Basket through the hole of " + hold.what, posed(outline("basket", speaker.basket), turned), outline("hole of " + hold.what, hold.hole));
}

export function covered(flange, hold, usual, turned) {
  const twice = known(usual.overlap.label + " at both ends", 2 * (usual.overlap.value || 0), 0, true);
  return contain("flange", "Flange over the hole of " + hold.what, outline("hole of " + hold.what, hold.hole), posed(flange, turned), [twice], "adapter").map(opened);
}

function opened(check) {
  const free = gap(check);
  if (check.verdict !== "fails" || free === null) return check;
  const left = free < 0 ? both(-free / 2) + " open" : "only " + both(free / 2) + " of overlap";
  return changed(check, { words: check.title + ": " + left + " at each end" + uncertain(check.uncertainty / 2) + ", adapter plate needed" });
}

export function lying(title, rim, hold, turned) {
  if (!hold.flat) return [];
  if (!hold.panel) return [untold("panel", title + " on the panel of " + hold.what, ["panel round the hole (not recorded)"])];
  return contain("panel", title + " on the panel of " + hold.what, posed(rim, turned), rectangle("panel", hold.panel));
}

export function turnable(speaker) { return !allRound([speaker.basket, speaker.flange]) || !!(speaker.bolts && speaker.bolts.pattern === "rectangle"); }

/* Whether outlines are round, as far as they are recorded. */
export function allRound(outlines) {
  const there = outlines.filter(Boolean);
  return there.length > 0 && there.every((one) => one.shape === "round");
}
