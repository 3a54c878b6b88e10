/* Whether a speaker goes into an opening, as `derive/fit/speaker.py` has it. */

import { matchBolts } from "./fit-bolts.js";
import { isLength, typed } from "./fit-margins.js";
import { outline } from "./fit-outlines.js";
import { depthCheck, grilleCheck, heights, roomFor, seatsOf, spacerCheck, spacerWindow, toGlass } from "./fit-room.js";
import { allRound, covered, lying, seated, through, turnable } from "./fit-seating.js";
import { KINDS, best, decide, less } from "./fit-verdict.js";
import { both, round } from "./lengths.js";
import { number, say } from "./words.js";

/** @import { SpacerSizes, SpeakerPlace, SpeakerSizes, Usual } from "published" */

/**
 * @param {SpeakerSizes} gear
 * @param {SpeakerPlace} opening
 * @param {Array<{ name: string, gear: SpacerSizes }>} spacers
 * @param {Usual} usual
 */
export function speaker(gear, opening, spacers, usual) {
  const one = { gear, opening, usual, room: roomFor(gear, opening, usual), turned: false };
  let found = best(ways(one, spacers));
  if (turnable(gear)) {
    const turned = best(ways({ ...one, turned: true}, spacers));
    const rank = (fit) => [KINDS.indexOf(fit.kind), fit.to_get.length ? 1 : 0];
    if (less(rank(turned), rank(found))) found = turned;
  }
  return { ...found, notes: found.notes.concat(otherWays(one, found), level(opening.impedance, gear.impedance, usual.bounds.heard), holes(opening, found), behind(opening.depth))};
}

function car(one) { return { what: say("fit-speaker/the-car"), hole: one.opening.hole, bolts: one.opening.bolts, panel: one.opening.panel, flat: true }; }

function seatedOn(one, hold) { return seated(one.gear, hold, one.usual, one.turned); }

function decided(one, checks, where, stock, toGet) {
  const said = [where.note, one.turned ? say("fit-speaker/turned") : ""].filter(Boolean);
  return decide(checks, stock ? [stock] : [], toGet ? [toGet] : [], said);
}

function ways(one, spacers) {
  return seatsOf(one.opening).map((where) => [plain(one, where)].concat(toGet(one, where), spacers.map((spacer) => onSpacer(one, where, spacer)))).flat();
}

function plain(one, where) {
  return decided(one, seatedOn(one, car(one)).concat([depthCheck(one.room, [where.offset]), grilleCheck(one.room, [where.offset])]), where);
}

function onSpacer(one, where, spacer) {
  const part = spacer.gear, height = [where.offset, typed(say("fit-speaker/thickness", { of: spacer.name }), part.thickness)];
  const checks = [].concat(
    through(one.gear, car(one), one.turned),
    seatedOn(one, { what: spacer.name, hole: part.hole, bolts: part.bolts }),
    spacerHeld(one, spacer),
    [depthCheck(one.room, height), grilleCheck(one.room, height)]);
  return decided(one, checks, where, spacer.name);
}

function spacerHeld(one, spacer) {
  const rim = outline(say("fit-speaker/rim", { of: spacer.name }), spacer.gear.flange), hold = car(one);
  return [].concat(
    covered(rim, hold, one.usual, false),
    lying(say("fit-speaker/rim-on-panel", { of: spacer.name }), rim, hold, false),
    matchBolts("spacer-bolts", spacer.gear.car_bolts || spacer.gear.bolts, one.opening.bolts, one.usual.bolts, hold.what,
      { turned: false, free: allRound([spacer.gear.flange, spacer.gear.hole]) }));
}

function toGet(one, where) {
  const depth = depthCheck(one.room, [where.offset]), on = seatedOn(one, car(one)).concat([depth]);
  const failing = on.filter((check) => check.verdict === "fails");
  if (!failing.length || !failing.every((check) => check.mend)) return [];
  const plate = failing.some((check) => check.mend === "adapter"), what = plate ? "plate" : "spacer";
  const raised = spacerCheck(one.room, where);
  const sure = depth.margin !== null && raised.margin !== null && raised.margin >= 0;
  const kept = on.filter((check) => failing.indexOf(check) < 0);
  const found = decided(one, kept.concat([raised]), where, "", sure ? heights(what, spacerWindow(one.room, where)) : say(`fit-speaker/get-${what}`));
  return [Object.assign(found, { plate })];
}

function otherWays(one, found) {
  const said = seatsOf(one.opening).map((where) => [where, plain(one, where)])
    .filter((pair) => JSON.stringify(pair[1].checks) !== JSON.stringify(found.checks))
    .map((pair) => say("fit-speaker/other-way", { way: pair[0].name, headline: pair[1].headline }));
  return said.concat(noWindow(one, found));
}

function noWindow(one, found) {
  const deep = found.checks.some((check) => check.mend === "spacer" && check.verdict === "fails");
  if (found.kind !== "does-not-fit" || !deep) return [];
  const where = seatsOf(one.opening)[0];
  if (spacerCheck(one.room, where).verdict !== "fails") return [];
  const pair = spacerWindow(one.room, where);
  const least = both(pair[0]);
  return [pair[1] > 0 ? say("fit-speaker/no-spacer", { least, most: both(pair[1]) }) : say("fit-speaker/no-spacer-at-all", { least })];
}

function level(old, fresh, heard) {
  if (!isLength(fresh) || !fresh.value) return [];
  if (!isLength(old) || !old.value) return [say("fit-speaker/level-unknown")];
  const change = round(10 * Math.log10(old.value / fresh.value), 1);
  if (!change) return [];
  const signed = (change > 0 ? "+" : "−") + number(Math.abs(change).toFixed(1));
  const said = say("fit-speaker/level", { "new": fresh.shown, old: old.shown, change: signed });
  return [Math.abs(change) > heard ? say("fit-speaker/heard", { said, heard }) : said];
}

function holes(opening, fit) {
  const mismatch = fit.checks.some((check) => check.name.indexOf("bolts") === 0 && check.verdict !== "fits");
  const sensor = opening.crash_sensor;
  if (!(mismatch || fit.plate) || sensor === "no") return [];
  return [sensor === "yes" ? say("fit-speaker/sensor") : say("fit-speaker/sensor-not-ruled-out")];
}

/* That a greater clearance was kept because nobody recorded what is behind. */
function behind(depth) {
  return depth && isLength(depth.clear) && toGlass(depth) === "unknown" ? [say("fit-speaker/behind-unknown")] : [];
}
