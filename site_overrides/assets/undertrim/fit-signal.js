/* Whether an amplifier takes the sound signal that it finds, and what switches it on, as `derive/fit/kinds/amplifier/inputs.py` and `waking.py` have them. */

import { said } from "./electrical-numbers.js";
import { matches } from "./concerns.js";
import { beside } from "./fit-feed.js";
import { isLength, untold } from "./fit-margins.js";
import { say } from "./words.js";

/** @import { Bay, Gear } from "./fit-feed.js" */
/** @typedef {{ checks?: any[], notes?: string[], parts?: string[], to_get?: string[], level?: string, converter?: Gear }} Heard */

const TURN_ON = "amplifier-turn-on";
const BEST = ["line", "speaker", "digital-ring"]; // where several are there: line level is made for it

/* The new receiver of the visit. */
function radio({ fitted }) { return Object.values(fitted).find((item) => item.kind === "receiver"); }

/* The levels there: a new receiver's, else what the record says of the place, else what the factory radio sends. */
function found(bay) {
  const fresh = radio(bay);
  if (fresh && fresh.gear.outputs.length) return fresh.gear.outputs;
  const sent = bay.feeding.sound.find((one) => matches(one.clauses, bay.car)), level = bay.opening.finds || (sent ? sent.output : "unknown");
  return level === "unknown" ? [] : [level];
}

/**
 * The level found against the inputs; a converter from stock where they differ. `level` is what it is fed with, if that is known.
 * @param {Bay} bay
 * @returns {Heard}
 */
export function hears(bay) {
  const levels = found(bay), { inputs } = bay.item.gear;
  if (!levels.length) return { checks: [untold("input", say("fit-amplifier/input"), [say("fit-amplifier/lacks-level")])] };
  if (levels.join() === "none") return { notes: [say("fit-amplifier/no-signal")], to_get: [say("fit-amplifier/get-signal-lead")] };
  const level = BEST.find((one) => levels.includes(one) && inputs.includes(one));
  return level ? { notes: [say("fit-amplifier/level-taken", { level: say(`levels/${level}`) })], level } : converted(bay, levels);
}

/* One that makes a turn-on saves a lead, and comes first. */
function converted(bay, levels) {
  const able = bay.suiting.filter((item) => item.kind === "converter" && levels.includes(item.gear.takes) && bay.item.gear.inputs.includes(item.gear.gives));
  const converter = able.find(makesTurnOn) || able[0], level = say(`levels/${levels[0]}`);
  if (!converter) return { to_get: [say("fit-amplifier/get-converter", { level })] };
  return { notes: [say("fit-amplifier/level-turned", { level, by: converter.name })], parts: [converter.name], level: converter.gear.gives, converter };
}

function makesTurnOn(item) { return item.gear.makes_turn_on === "yes"; }

/**
 * How it wakes. A wire comes first; a signal at speaker level does for one that senses it, and a converter may make a turn-on of it.
 * @param {Bay} bay
 * @param {Heard} heard
 */
export function wakes(bay, heard) {
  const source = switched(bay), ways = bay.item.gear.wakes_by;
  if (source.by === "wire" && ways.includes("wire")) return onWire(bay, source.limit);
  if (ways.includes("signal") && heard.level === "speaker") return { notes: [say("fit-amplifier/wakes-by-signal")] };
  if (ways.includes("wire") && heard.converter && makesTurnOn(heard.converter)) return { notes: [say("fit-amplifier/turn-on-made", { by: heard.converter.name })] };
  if (source.by !== "unknown") return { to_get: [say(`fit-amplifier/get-turn-on-${source.by}`)] };
  return { checks: [untold("turn-on", say("fit-amplifier/turn-on"), [say("fit-amplifier/lacks-turn-on")])] };
}

/* A turn-on lead of a new receiver, else what the record says of the place; with what it gives in A where its maker says so. */
function switched(bay) {
  const fresh = radio(bay), leads = fresh && bay.stock.find((item) => item.kind === "leads" && item.id === fresh.gear.lead_set);
  if (!leads || !leads.gear.functions.includes(TURN_ON)) return { by: bay.opening.switched_on_by || "unknown", limit: null };
  const told = leads.gear.limits.find((one) => one.function === TURN_ON);
  return { by: "wire", limit: told ? told.limit.value : null };
}

/* All that hang on the lead against what it gives; a relay where that is too little. What is only usual asks and never decides. */
function onWire(bay, limit) {
  const draws = [bay.item, ...beside(bay, false)].map((item) => item.gear.turn_on_draws);
  if (!draws.every(isLength)) return { notes: [say("fit-amplifier/turn-on-unmeasured")] };
  const drawn = draws.reduce((sum, one) => sum + one.value, 0), { turn_on: usual } = bay.usual.amplifiers;
  const amounts = { drawn: said(drawn, "A"), limit: said(limit === null ? usual : limit, "A") };
  if (limit === null) return { notes: [drawn > usual ? say("fit-amplifier/turn-on-ask", amounts) : say("fit-amplifier/turn-on-usual", amounts)] };
  return drawn > limit ? { notes: [say("fit-amplifier/turn-on-short", amounts)], to_get: [say("fit-amplifier/get-relay")] } : { notes: [say("fit-amplifier/turn-on-fits", amounts)] };
}
