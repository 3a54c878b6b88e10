/* Whether a tweeter goes into its place, and what keeps the low tones away from it, as `derive/fit/kinds/tweeter` has it. */

import { capped, compare, foundBy, isLength, known, made, named, typed, untold } from "./fit-margins.js";
import { toGlass } from "./fit-room.js";
import { best, decide } from "./fit-verdict.js";
import { say } from "./words.js";

/** @import { CrossoverSizes, TweeterMount, TweeterPlace, TweeterSizes, Usual } from "published" */

const ORDERS = ["first", "second", "third", "fourth"];

/**
 * @param {TweeterSizes} gear
 * @param {TweeterPlace} opening
 * @param {Array<{ name: string, gear: CrossoverSizes }>} crossovers
 * @param {Usual} usual
 * @param {string} toGet what would keep low tones away and is not in stock
 */
export function tweeter(gear, opening, crossovers, usual, toGet) {
  const fed = feeds(gear, opening, crossovers, toGet);
  return best(holds(gear, opening, usual).flatMap((checks) => fed.map((way) => decide(checks.concat(way.checks), way.parts, way.to_get, []))));
}

/* The mount that gear must have here; empty where that is not known. Into a cup of the car goes the bare body. */
function wanted(opening) {
  if (opening.mount === "" || opening.mount === "unknown") return "";
  return opening.cup && opening.mount === "angled" ? "flush" : opening.mount;
}

/* The checks of each mount in the box that goes here; one that fails, or cannot be told, where none does. */
function holds(gear, opening, usual) {
  const title = say("fit-tweeter/mount"), mount = wanted(opening);
  if (!mount) return [[untold("mount", title, [say("fit-tweeter/mount-unknown")])]];
  const suiting = gear.mounts.filter((one) => one.mount === mount);
  return suiting.length ? suiting.map((one) => held(one, opening, usual)) : [[made("mount", title, "fails", foundBy(title, say(`fit-tweeter/no-${mount}`)))]];
}

/**
 * @param {TweeterMount} mount
 * @param {TweeterPlace} opening
 * @param {Usual} usual
 */
function held(mount, opening, usual) {
  const sunk = mount.mount === "flush" ? inside(mount, opening, usual)
    : [compare("flat", say("fit-tweeter/on-flat"), [typed(say("opening-facts/flat"), opening.flat)], [typed(say("fit-tweeter/foot"), mount.diameter)])];
  if (opening.room_in_front === "none") return sunk;
  const front = typed(say("opening-facts/room_in_front"), opening.room_in_front);
  return sunk.concat([compare("front", say("fit-tweeter/front"), [front], [typed(say("fit-tweeter/over"), mount.over), usual.tweeter_front])]);
}

/* The body in cut-out or cup, the rim over the cut-out, the depth to what comes first. */
function inside(mount, opening, usual) {
  const body = typed(say("fit-tweeter/body"), mount.diameter), label = say("fit-tweeter/depth-of-body"), { cup } = opening, checks = [];
  const deep = mount.depth === "none" ? known(label, 0, 0, false) : typed(label, mount.depth);
  if (cup) {
    checks.push(compare("cup", say("fit-tweeter/in-cup"), [typed(say("opening-facts/cup"), cup.diameter)], [body]));
    checks.push(compare("cup-depth", say("fit-tweeter/to-floor"), [typed(say("fit-tweeter/cup-depth"), cup.depth)], [deep]));
  }
  if (opening.cut_out || !cup) checks.push(...inCutOut(mount, opening, body, usual));
  if (opening.depth || !cup) checks.push(behind(deep, opening.depth, usual));
  return checks;
}

function inCutOut(mount, opening, body, usual) {
  const hole = typed(say("opening-facts/cut_out"), opening.cut_out), fits = compare("hole", say("fit-tweeter/holds"), [hole], [body]);
  if (mount.rim === null || mount.rim === "none") return [fits];
  const one = usual.tweeter_rim, twice = known(say("fit-tweeter/all-round", { what: one.label }), 2 * (one.value || 0), 0, true);
  return [fits, compare("rim", say("fit-tweeter/covers"), [typed(say("fit-tweeter/rim"), mount.rim)], [hole, twice])];
}

/* The depth; one measured with the glass down alone, or from an unsaid face, is marginal at best. */
function behind(deep, depth, usual) {
  const kept = depth && toGlass(depth) === "no" ? usual.tweeter_behind : usual.rear_glass;
  let check = compare("depth", say("fit-tweeter/depth"), [typed(say("fit/clear-depth"), depth ? depth.clear : "unknown")], [deep, kept]);
  if (depth && depth.over === "glass-down") check = capped(check, say("fit-speaker/glass-down"));
  return depth && depth.datum ? check : capped(check, say("fit-tweeter/no-datum"));
}

/* The ways to feed it: the crossover of the car, what comes with it, one in stock, or a part to get. */
function feeds(gear, opening, crossovers, toGet) {
  const title = say("fit-tweeter/high-pass"), one = (checks, parts = [], get = []) => ({ checks, parts, to_get: get });
  if (opening.feed === "crossover") return [one([staying(gear.high_pass, opening.corner, title)])];
  const own = ["crossover", "capacitor"].find((thing) => gear.comes_with.includes(thing));
  if (own) return [one([made("high-pass", title, "fits", foundBy(title, say(`fit-tweeter/own-${own}`))), ...ownPlace(own, opening)])];
  return [...crossovers.map((item) => throughOne(item, gear, opening, title)).filter(Boolean), ...missingPart(gear, title, toGet)];
}

function ownPlace(own, opening) {
  return own === "crossover" && !opening.crossover_place ? [untold("crossover-place", say("fit-tweeter/crossover-place"), [say("fit-tweeter/no-place")])] : [];
}

/* The crossover of the car against what the tweeter needs. */
function staying(needed, corner, title) {
  const least = needed ? needed.frequency : null;
  if (!isLength(least)) return untold("high-pass", title, [named(typed(say("fit-tweeter/needed"), least))]);
  if (!isLength(corner)) return made("high-pass", title, "marginal", foundBy(title, say("fit-tweeter/corner-unseen", { least: least.shown })));
  return made("high-pass", title, corner.value >= least.value ? "fits" : "fails", foundBy(title, say("fit-tweeter/corner", { corner: corner.shown, least: least.shown })));
}

/* Through a crossover in stock; null where it is not made for such a tweeter, or does not go into its place. */
function throughOne(item, gear, opening, title) {
  const place = opening.crossover_place, own = item.gear;
  if (!place || !gear.high_pass || !suits(own, gear)) return null;
  const boxed = inBox(item, place);
  if (boxed.some((check) => check.verdict === "fails")) return null;
  const words = say("fit-tweeter/through", { name: item.name, corner: own.frequency.shown, order: say(`filter-orders/${own.filter_order}`) });
  return { checks: [made("high-pass", title, "fits", foundBy(title, words)), ...boxed], parts: [item.name], to_get: [] };
}

/* Its corner is no lower and its slope no flatter than what is needed, and it is made for that impedance. */
function suits(own, gear) {
  const needed = gear.high_pass;
  if (![own.frequency, needed.frequency, own.impedance, gear.impedance].every(isLength)) return false;
  return own.frequency.value >= needed.frequency.value && ORDERS.indexOf(own.filter_order) >= ORDERS.indexOf(needed.filter_order) && own.impedance.value === gear.impedance.value;
}

/* Whether its box goes into the place, laid as it lies best: side against side by length. */
function inBox(item, place) {
  const ours = sides(item.gear.box), theirs = sides(place);
  return ["long", "middle", "short"].map((name, at) => compare(`crossover-${name}`, say(`fit-tweeter/box-${name}`), [typed(say("fit-tweeter/room-at", { at: place.at }), theirs[at])], [typed(item.name, ours[at])]));
}

function sides(box) {
  const size = (one) => isLength(one) ? -one.value : 0;
  return (box ? [box.width, box.height, box.depth] : [null, null, null]).sort((one, other) => size(one) - size(other));
}

/* A part that would have to be got; which one, the shelf says. */
function missingPart(gear, title, toGet) {
  const needed = gear.high_pass, least = needed ? needed.frequency : null;
  if (needed && isLength(least) && isLength(gear.impedance)) return [{ checks: [made("high-pass", title, "fits", foundBy(title, say("fit-tweeter/none-there")))], parts: [], to_get: [toGet] }];
  const numbers = [typed(say("fit-tweeter/needed"), least), typed(say("fit-tweeter/impedance"), gear.impedance)];
  return [{ checks: [untold("high-pass", title, numbers.filter((one) => one.value === null).map(named))], parts: [], to_get: [say("fit-tweeter/get-any")] }];
}
