/* Whether two bolt patterns meet, as `derive/fit/bolts.py` and `angles.py` have it. */

import { changed, compare, foundBy, hypot, isLength, known, lacks, made, notRecorded, spread, typed, uncertain, untold } from "./fit-margins.js";
import { both, round } from "./lengths.js";
import { say } from "./words.js";

/** @import { FitNumber } from "published" */

export function matchBolts(name, gear, car, play, what, pose) {
  const title = say("fit-speaker/bolts", { of: what });
  if (!gear || !car) {
    const missing = [[say("fit-speaker/holes-gear"), gear], [say("fit-speaker/holes-of", { of: what }), car]]
      .filter((row) => !row[1]).map((row) => lacks(row[0], notRecorded()));
    return [untold(name, title, missing)];
  }
  if (!counts(gear, car)) return [made(name, title, "fails", say("fit-speaker/counts-differ", { check: title, car: car.count, gear: gear.count }), { mend: "adapter" })];
  const pairs = boltPairs(gear, car, pose.turned).map((row) => same(name, row[0] ? say(row[0], { check: title }) : title, row[1], row[2], play));
  return pose.free ? pairs : pairs.concat(angleCheck(name, title, gear, car, play, pose.turned));
}

/* Where the holes are round the middle, for what is not round and cannot be turned at will. */
function angleCheck(name, title, gear, car, play, turned) {
  const rings = [["gear", gear], ["car", car]].filter((row) => row[1].pattern === "circle");
  const firsts = rings.map((row) => typed(say(`fit-speaker/angle-${row[0]}`), row[1].angle));
  const across = rings.map((row) => circle(row[0], row[1])), angled = say("fit-speaker/angle", { check: title });
  if (firsts.concat(across).some((one) => one.value === null)) return [compare(name + "-angle", angled, [play], firsts.concat(across), "adapter")];
  if (!rings.length) return [];
  const off = angleOff(gear, car, turned ? 90 : 0), radius = across[0].value / 2;
  const step = radius * hypot(firsts.map((one) => one.step)) * (Math.PI / 180);
  const gone = known(say("fit-speaker/holes-apart", { degrees: round(off, 1) }), radius * (off * (Math.PI / 180)), step);
  return [compare(name + "-angle", angled, [play], [gone], "adapter")];
}

function angleOff(gear, car, turn) {
  let ours = angles(gear).map((angle) => angle + turn), theirs = angles(car);
  if (car.pattern === "rectangle" || (gear.pattern === "circle" && gear.count > car.count)) { const kept = ours; ours = theirs; theirs = kept; }
  const pitch = 360 / theirs.length;
  return Math.max(...ours.map((angle) => {
    const rest = (angle - theirs[0] + pitch / 2) % pitch;
    return Math.abs((rest < 0 ? rest + pitch : rest) - pitch / 2);
  }));
}

function angles(bolts) {
  const found = [];
  if (bolts.pattern === "circle") {
    for (let i = 0; i < bolts.count; i += 1) found.push((isLength(bolts.angle) ? bolts.angle.value : 0) + 360 * i / bolts.count);
    return found;
  }
  const size = (side) => isLength(side) ? side.value : 0;
  const corner = Math.atan2(size(bolts.width), size(bolts.height)) * (180 / Math.PI);
  return [corner, 180 - corner, 180 + corner, 360 - corner];
}

function counts(gear, car) {
  if (gear.pattern === "rectangle" && car.pattern === "rectangle") return gear.count === car.count;
  if (gear.pattern === car.pattern) return Math.max(gear.count, car.count) % Math.min(gear.count, car.count) === 0;
  const box = gear.pattern === "rectangle" ? gear : car, ring = box === gear ? car : gear;
  return box.count === 4 && ring.count >= 4 && ring.count % 2 === 0;
}

/**
 * What must be the same in both patterns: the code that names it beside the title, empty for the only one, and the two lengths.
 * @returns {Array<[string, FitNumber, FitNumber]>}
 */
function boltPairs(gear, car, turned) {
  if (gear.pattern === "circle" && car.pattern === "circle") return [["", circle("gear", gear), circle("car", car)]];
  if (gear.pattern === car.pattern) {
    const ours = sides("gear", gear), theirs = sides("car", car);
    if (turned) ours.reverse();
    return [["fit/check-across", ours[0], theirs[0]], ["fit/check-up", ours[1], theirs[1]]];
  }
  const box = gear.pattern === "rectangle" ? gear : car, ring = box === gear ? car : gear;
  return [["fit-speaker/diagonal", diagonal(box), circle("circle", ring)], ["fit-speaker/round-the-circle", ...arcs(box, ring)]];
}

function circle(whose, bolts) { return typed(say(`fit-speaker/circle-${whose}`), bolts.diameter); }

function sides(whose, bolts) { return [typed(say(`fit-speaker/width-${whose}`), bolts.width), typed(say(`fit-speaker/height-${whose}`), bolts.height)]; }

function diagonal(box) {
  const pair = sides("rectangle", box), width = pair[0], height = pair[1];
  const label = say("fit-speaker/diagonal-of-rectangle");
  if (width.value === null || height.value === null) return typed(label, "unknown");
  const long = hypot([width.value, height.value]);
  return known(label, long, long ? hypot([width.value * width.step, height.value * height.step]) / long : 0);
}

/** @returns {[FitNumber, FitNumber]} */
function arcs(box, ring) {
  const pair = sides("rectangle", box), across = circle("circle", ring);
  if (pair[0].value === null || pair[1].value === null || across.value === null) {
    const lost = typed(say("fit-speaker/pattern"), "unknown");
    return [lost, lost];
  }
  const angle = 2 * Math.atan2(pair[1].value, pair[0].value), pitch = 2 * Math.PI / ring.count;
  const held = pitch * Math.max(1, round(angle / pitch, 0)), radius = across.value / 2;
  return [known(say("fit-speaker/corners-along"), angle * radius, spread(pair)), known(say("fit-speaker/holes-along"), held * radius)];
}

function same(name, title, gear, car, play) {
  if (gear.value === null || car.value === null) return compare(name, title, [play], [gear, car], "adapter");
  const gone = Math.abs(gear.value - car.value);
  const words = say("fit-speaker/difference", { one: gear.label, size: gear.text, other: car.label, other_size: car.text });
  const check = compare(name, title, [play], [known(words, gone, spread([gear, car]))], "adapter");
  return check.verdict === "fails" ? changed(check, { words: foundBy(title, uncertain(say("fit-speaker/apart", { length: both(gone) }), check.uncertainty)) }) : check;
}
