/* How a speaker sits on what holds it: through the hole, over it, on the panel, as `derive/fit/seating.py` has it. */

import { matchBolts } from "./fit-bolts.js";
import { changed, foundBy, gap, known, uncertain, untold } from "./fit-margins.js";
import { contain, outline, posed, rectangle } from "./fit-outlines.js";
import { both } from "./lengths.js";
import { say } from "./words.js";

export function seated(speaker, hold, usual, turned) {
  const flange = outline(say("fit-speaker/flange"), speaker.flange);
  return [].concat(
    through(speaker, hold, turned),
    covered(flange, hold, usual, turned),
    lying(say("fit-speaker/flange-on-panel"), flange, hold, turned),
    matchBolts("bolts", speaker.bolts, hold.bolts, usual.bolts, hold.what, { turned, free: allRound([speaker.basket, speaker.flange]) }));
}

export function through(speaker, hold, turned) {
  return contain("hole", say("fit-speaker/through", { of: hold.what }), posed(outline(say("fit-speaker/basket"), speaker.basket), turned), holeOf(hold));
}

function holeOf(hold) { return outline(say("fit-speaker/hole-of", { of: hold.what }), hold.hole); }

export function covered(flange, hold, usual, turned) {
  const twice = known(say("fit-speaker/both-ends", { what: usual.overlap.label }), 2 * (usual.overlap.value || 0), 0, true);
  return contain("flange", say("fit-speaker/covers", { of: hold.what }), holeOf(hold), posed(flange, turned), [twice], "adapter").map(opened);
}

function opened(check) {
  const free = gap(check);
  if (check.verdict !== "fails" || free === null) return check;
  const length = both(Math.abs(free) / 2), left = free < 0 ? say("fit-speaker/open-at-ends", { length }) : say("fit-speaker/overlap-at-ends", { length });
  return changed(check, { words: foundBy(check.title, say("fit-speaker/plate-needed", { left: uncertain(left, check.uncertainty / 2) })) });
}

export function lying(what, rim, hold, turned) {
  if (!hold.flat) return [];
  const title = say("fit-speaker/on-panel", { what, of: hold.what });
  if (!hold.panel) return [untold("panel", title, [say("fit-speaker/lacks-panel")])];
  return contain("panel", title, posed(rim, turned), rectangle(say("fit-speaker/panel"), hold.panel));
}

export function turnable(speaker) { return !allRound([speaker.basket, speaker.flange]) || !!(speaker.bolts && speaker.bolts.pattern === "rectangle"); }

/* Whether outlines are round, as far as they are recorded. */
export function allRound(outlines) {
  const there = outlines.filter(Boolean);
  return there.length > 0 && there.every((one) => one.shape === "round");
}
