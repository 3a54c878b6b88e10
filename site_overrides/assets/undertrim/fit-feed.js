/* What feeds an amplifier: current, cable, fuses and ground, and what is left of alternator and battery, as `derive/fit/kinds/amplifier/feed.py` and `budget.py` have them. */

import { cable } from "./electrical-cable.js";
import { size, supply } from "./electrical-drop.js";
import { Refused, said, tables, usual as usualOf } from "./electrical-numbers.js";
import { rest } from "./electrical-sound.js";
import { matches } from "./concerns.js";
import { isLength, lacks, notRecorded, untold } from "./fit-margins.js";
import { round } from "./lengths.js";
import { say } from "./words.js";

/** @import { AmplifierPlace, AmplifierSizes, Feeding, ShelfGear, Usual } from "published" */
/** @typedef {Omit<ShelfGear, "gear"> & { gear: any }} Gear by its kind it has what is asked of it */
/**
 * An amplifier at a place in one kind of car: with what else is fitted, by opening, what of the shelf suits the place, and the whole of it.
 * @typedef {{ item: Omit<ShelfGear, "gear"> & { gear: AmplifierSizes }, opening: AmplifierPlace, feeding: Feeding, car: Record<string, string>, fitted: Record<string, Gear>, suiting: Gear[], stock: Gear[], usual: Usual }} Bay
 */

/* The current at full power in A: as its maker says, else from power and efficiency; null without a power. */
function current({ rated }) {
  if (!rated || !isLength(rated.power)) return null;
  if (isLength(rated.current)) return rated.current.value;
  return supply({ power: rated.power.value, efficiency: isLength(rated.efficiency) ? rated.efficiency.value / 100 : null }).current;
}

/**
 * The other amplifiers of the visit in this car, or those alone that are fed along the same run.
 * @param {Bay} bay
 * @param {boolean} onRun
 * @returns {Gear[]}
 */
export function beside({ feeding, car, fitted }, onRun) {
  const there = feeding.beside.filter((one) => matches(one.clauses, car) && (one.same_run || !onRun));
  return there.map((one) => fitted[one.opening]).filter((item) => item && item.kind === "amplifier");
}

/**
 * The feed of one amplifier with what shares its run. It cannot be told without a current, a run or its length.
 * @param {Bay} bay
 */
export function feed(bay) {
  const every = [bay.item, ...beside(bay, true)].sort((one, other) => one.id < other.id ? -1 : 1);
  try {
    return fed(bay, every.map((item) => ({ item, amps: current(item.gear) })));
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    return cannotTell(error.message);
  }
}

function cannotTell(lacking) { return { checks: [untold("feed", say("fit-amplifier/feed"), [lacking])] }; }

function fed(bay, every) {
  const { run } = bay.feeding;
  if (every.some((one) => one.amps === null)) return cannotTell(say("fit-amplifier/lacks-current"));
  if (!run || run.length === null) return cannotTell(lacks(say("fit-amplifier/run-length"), notRecorded()));
  const total = every.reduce((sum, one) => sum + one.amps, 0), wishes = { place: run.place, insulation: run.insulation };
  const main = cable({ path: { current: total, out: run.length, back: "body" }, wishes });
  const taken = say("fit-amplifier/takes-current", { current: said(total, "A"), run: run.name, length: said(run.length, "m") });
  const branches = every.length > 1 ? every.map((one) => branch(one, bay.usual)) : [];
  return { notes: [say("fit-amplifier/main", { taken, cable: main.headline }), ...branches, ...ground(bay.opening, main), ...fusePlace(bay.opening)] };
}

/* From the distribution block to one of several, with a fuse of its own. */
function branch({ item, amps }, usual) {
  const found = cable({ path: { current: amps, out: usual.amplifiers.branch, back: "body" }, wishes: {} });
  return say("fit-amplifier/branch", { gear: item.name, current: said(amps, "A"), cable: found.headline });
}

/* The ground as thick as the feed, at the place that the record names. */
function ground({ ground_point: point }, main) {
  if (main.size === null) return [];
  const thick = size("awg", main.size).label;
  return [point ? say(`fit-amplifier/ground-paint-${point.paint || "unknown"}`, { size: thick, at: point.at }) : say("fit-amplifier/ground-nowhere", { size: thick })];
}

/* That the main fuse would stand farther from the battery than is common practice, or that nobody measured it. */
function fusePlace({ fuse_place: place }) {
  const most = tables.fuses.place.within, within = said(most, "m");
  if (!place || !isLength(place.from_battery)) return [say("fit-amplifier/fuse-unmeasured", { within })];
  const far = place.from_battery.value / 1000;
  return far > most ? [say("fit-amplifier/fuse-far", { at: place.at, far: said(far, "m"), within })] : [];
}

/* The current at full power of every amplifier of the visit, whatever run it hangs on; null where one cannot be told. */
function inAll(bay) {
  try {
    const amps = [bay.item, ...beside(bay, false)].map((item) => current(item.gear));
    return amps.includes(null) ? null : amps.reduce((sum, one) => sum + one, 0);
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    return null;
  }
}

/**
 * What amplifiers leave of alternator and battery, with all that is assumed said beside it. None of it decides whether gear fits.
 * @param {Bay} bay
 */
export function budget(bay) {
  const amps = inAll(bay), given = bay.feeding.supply, usual = bay.usual.amplifiers;
  if (amps === null) return [];
  const average = amps * usual.music, plate = given ? given.alternator : null;
  const idle = isLength(plate) ? atIdle(plate.value, average, usual) : say("fit-amplifier/alternator-unknown", { average: said(average, "A") });
  return [idle, ...(given && isLength(given.battery) ? engineOff(given.battery.value, average) : [])];
}

function atIdle(plate, average, usual) {
  const left = plate * usual.idle - usual.car, numbers = {
    average: said(average, "A"), music: said(usual.music, "share"), plate: said(plate, "A"),
    idle: said(usual.idle, "share"), car: said(usual.car, "A"), left: said(Math.max(left, 0), "A")
  };
  return left >= average ? say("fit-amplifier/alternator-enough", numbers) : say("fit-amplifier/alternator-short", numbers);
}

/* How long music plays until the usual share of the battery is gone. */
function engineOff(capacity, average) {
  try {
    const hours = round(rest({ capacity, current: average }).days * 24, 1);
    return [say("fit-amplifier/engine-off", { hours, capacity: said(capacity, "Ah"), share: said(usualOf("rest_share"), "share"), average: said(average, "A") })];
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    return [];
  }
}
