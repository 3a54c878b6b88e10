/* Whether an amplifier goes into its place, in each of its six turned positions, as `derive/fit/kinds/amplifier/turning.py` has it; and all else that it wants there. */

import { budget, feed } from "./fit-feed.js";
import { amount, capped, changed, compare, foundBy, isLength, lacks, notRecorded, typed, untold } from "./fit-margins.js";
import { outputs } from "./fit-outputs.js";
import { hears, wakes } from "./fit-signal.js";
import { KINDS, decide, less, smallest } from "./fit-verdict.js";
import { say } from "./words.js";

/** @import { AmplifierPlace, AmplifierSizes, Usual } from "published" */
/** @import { Bay } from "./fit-feed.js" */

const AXES = ["width", "height", "depth"];
/* Which side of the amplifier lies along width, height and depth of the place; as it was drawn first. */
const POSES = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];

/**
 * The best of all positions: what fits before what does not, lying flat before standing, then the larger margin.
 * @param {AmplifierSizes} gear
 * @param {AmplifierPlace} opening
 * @param {unknown[]} _ nothing goes between
 * @param {Usual} usual
 */
export function amplifier(gear, opening, _, usual) {
  const every = POSES.map((order) => posed(gear, opening, usual, order));
  return every.reduce((found, one) => less(preferred(one), preferred(found)) ? one : found).fit;
}

function preferred({ flat, fit }) { return [KINDS.indexOf(fit.kind), flat ? 0 : 1, -smallest(fit.checks)]; }

function sides(box, code) { return AXES.map((axis) => typed(say(`fit-amplifier/${code}${axis}`), box ? box[axis] : null)); }

function posed(gear, opening, usual, order) {
  const space = sides(opening.space, "space-"), box = sides(gear.size, ""), turned = order.map((side) => box[side]), flat = order[1] === 1;
  const within = AXES.map((axis, at) => compare(`space-${axis}`, say(`fit-amplifier/check-${axis}`), [space[at]], [turned[at]]));
  const notes = order === POSES[0] ? [] : [say(flat ? "fit-amplifier/turned" : "fit-amplifier/on-its-side")];
  return { flat, fit: decide([...within, ...wayIn(box, opening), ...air(gear, opening, usual, space, turned)], [], [], notes) };
}

function size(one) { return one.value || 0; }

/* Of a side of which only a lower bound is known: it may be the wider one, however small the bound. */
function most(one) { return size(one) + one.more; }

function sorted(numbers, by) { return numbers.slice().sort((one, other) => by(one) - by(other)); }

/* Whether it passes with its longest side ahead: the two others, the smaller one across the smaller side of the passage. */
function wayIn(box, opening) {
  const title = say("fit-amplifier/way-in"), passage = opening.way_in;
  if (!passage) return [untold("way-in", title, [lacks(title, notRecorded())])];
  const way = [typed(say("fit-amplifier/way-width"), passage.width), typed(say("fit-amplifier/way-height"), passage.height)];
  if ([...way, ...box].some((one) => one.value === null)) return [compare("way-in", title, way, box)];
  const leading = sorted(box, size).slice(0, 2), checks = across(sorted(way, size), leading);
  return checks.some((check) => check.verdict === "fails") ? across(sorted(way, most), leading) : checks;
}

function across(way, leading) { return ["narrow", "wide"].map((name, at) => compare(`way-in-${name}`, say(`fit-amplifier/way-in-${name}`), [way[at]], [leading[at]])); }

/* Room for air above and along one side, as a caution: it never says that the amplifier does not go in. */
function air(gear, opening, usual, space, box) {
  const wanted = isLength(gear.cooling) ? typed(say("fit-amplifier/cooling"), gear.cooling) : usual.cooling;
  const above = compare("air-above", say("fit-amplifier/air-above"), [space[1]], [box[1], wanted]);
  const beside = [0, 2].map((at) => compare("air-beside", say("fit-amplifier/air-beside"), [space[at]], [box[at], wanted]));
  const room = (check) => check.margin === null ? -1e9 : check.margin, widest = beside.reduce((found, one) => room(one) > room(found) ? one : found);
  const still = opening.air === "open" ? "" : opening.air === "closed" ? say("fit-amplifier/air-closed") : say("fit-amplifier/air-unknown");
  return [above, widest].filter((check) => check.margin !== null || check.numbers[0].lacking).map((check) => caution(check === above ? capped(check, still) : check));
}

/* What is short for air alone, or may be behind a lower bound, as marginal. */
function caution(check) {
  if (check.verdict === "unknown") return changed(check, { verdict: "marginal" });
  if (check.verdict !== "fails") return check;
  return changed(check, { verdict: "marginal", words: foundBy(check.title, say("fit-amplifier/warm", { short: amount(check.margin, check.uncertainty) })) });
}

/**
 * One that goes in, with its feed, loads, input and turn-on in one kind of car.
 * @param {any} found by size alone
 * @param {Bay} bay
 */
export function connected(found, bay) {
  if (found.kind === "does-not-fit") return found; // what would feed it is of no use then
  const heard = hears(bay), every = [feed(bay), outputs(bay), heard, wakes(bay, heard)];
  const all = (key) => every.flatMap((one) => one[key] || []);
  return decide([...found.checks, ...all("checks")], heard.parts || [], all("to_get"), [...found.notes, ...all("notes"), ...budget(bay)]);
}
