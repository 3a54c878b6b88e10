/* Whether two bolt patterns meet, as `derive/fit/bolts.py` and `angles.py` have it. */

import { changed, compare, hypot, isLength, known, made, number, spread, typed, uncertain, untold } from "./fit-margins.js";
import { both, round } from "./lengths.js";

export function matchBolts(name, gear, car, play, what, pose) {
  const title = "Bolt holes of " + what;
  if (!gear || !car) {
    const missing = [["bolt holes of the gear", gear], ["bolt holes of " + what, car]]
      .filter((row) => !row[1]).map((row) => row[0] + " (not recorded)");
    return [untold(name, title, missing)];
  }
  if (!counts(gear, car)) return [made(name, title, "fails", title + ": " + car.count + " do not meet the " + gear.count + " of the gear", { mend: "adapter" })];
  const pairs = boltPairs(gear, car, pose.turned).map((row) => same(name, title + row[0], row[1], row[2], play));
  return pose.free ? pairs : pairs.concat(angleCheck(name, title, gear, car, play, pose.turned));
}

/* Where the holes are round the middle, for what is not round and cannot be turned at will. */
function angleCheck(name, title, gear, car, play, turned) {
  const rings = [["gear", gear], ["held by", car]].filter((row) => row[1].pattern === "circle");
  const firsts = rings.map((row) => typed("angle of the bolt circle (" + row[0] + ")", row[1].angle));
  const across = rings.map((row) => circle(row[0], row[1]));
  if (firsts.concat(across).some((one) => one.value === null)) return [compare(name + "-angle", title + ", angle", [play], firsts.concat(across), "adapter")];
  if (!rings.length) return [];
  const off = angleOff(gear, car, turned ? 90 : 0), radius = across[0].value / 2;
  const step = radius * hypot(firsts.map((one) => one.step)) * (Math.PI / 180);
  const gone = known("holes " + Number(round(off, 1)) + "° apart, along the circle", radius * (off * (Math.PI / 180)), step);
  return [compare(name + "-angle", title + ", angle", [play], [gone], "adapter")];
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

function boltPairs(gear, car, turned) {
  if (gear.pattern === "circle" && car.pattern === "circle") return [["", circle("gear", gear), circle("held by", car)]];
  if (gear.pattern === car.pattern) {
    const ours = sides("gear", gear), theirs = sides("held by", car);
    if (turned) ours.reverse();
    return [[", across", ours[0], theirs[0]], [", up", ours[1], theirs[1]]];
  }
  const box = gear.pattern === "rectangle" ? gear : car, ring = box === gear ? car : gear;
  return [[", diagonal", diagonal(box), circle("circle", ring)], [", round the circle", ...arcs(box, ring)]];
}

function circle(whose, bolts) { return typed("bolt circle (" + whose + ")", bolts.diameter); }

function sides(whose, bolts) { return [typed("bolt width (" + whose + ")", bolts.width), typed("bolt height (" + whose + ")", bolts.height)]; }

function diagonal(box) {
  const pair = sides("rectangle", box), width = pair[0], height = pair[1];
  if (width.value === null || height.value === null) return number("diagonal of the bolt rectangle", null, 0, "unknown");
  const long = hypot([width.value, height.value]);
  return known("diagonal of the bolt rectangle", long, long ? hypot([width.value * width.step, height.value * height.step]) / long : 0);
}

function arcs(box, ring) {
  const pair = sides("rectangle", box), across = circle("circle", ring);
  if (pair[0].value === null || pair[1].value === null || across.value === null) {
    const lost = number("bolt pattern", null, 0, "unknown");
    return [lost, lost];
  }
  const angle = 2 * Math.atan2(pair[1].value, pair[0].value), pitch = 2 * Math.PI / ring.count;
  const held = pitch * Math.max(1, round(angle / pitch, 0)), radius = across.value / 2;
  return [known("corners, along the circle", angle * radius, spread(pair)), known("holes, along the circle", held * radius)];
}

function same(name, title, gear, car, play) {
  if (gear.value === null || car.value === null) return compare(name, title, [play], [gear, car], "adapter");
  const gone = Math.abs(gear.value - car.value);
  const words = "difference between " + gear.label + " " + gear.text + " and " + car.label + " " + car.text;
  const check = compare(name, title, [play], [known(words, gone, spread([gear, car]))], "adapter");
  return check.verdict === "fails" ? changed(check, { words: title + ": " + both(gone) + " apart" + uncertain(check.uncertainty) }) : check;
}
