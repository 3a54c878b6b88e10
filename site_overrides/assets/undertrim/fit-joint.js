/* What stands between a receiver and the wires of one car, and what becomes of the duties of the factory unit, as `derive/fit/kinds/receiver/between.py`, `sound.py`, `functions.py` and `derive/fit/duties.py` have them. */

import { matches } from "./concerns.js";
import { untold } from "./fit-margins.js";
import { list, say } from "./words.js";

/** @import { HadDuty, Joining, ShelfGear } from "published" */
/** @typedef {Record<string, string>} Car */
/** @typedef {Omit<ShelfGear, "gear"> & { gear: any }} Gear by its kind it has what is asked of it */

const TURN_ON = "amplifier-turn-on";
const ADAPTERS = ["harness", "interface"];

/**
 * What joins a receiver: parts by name, what is to be got, checks that cannot be told, and why it must not take the factory unit's place.
 * @param {Gear} receiver
 * @param {Joining} joining
 * @param {Car} car
 * @param {Gear[]} shelf what suits the opening of this car
 */
export function joint(receiver, joining, car, shelf) {
  const kept = joining.duties.filter((duty) => matches(duty.clauses, car)).map((duty) => outcome(duty, receiver, car, shelf));
  const adapters = shelf.filter((item) => ADAPTERS.includes(item.kind));
  const wanted = needed(receiver, joining, car).map((name) => need(name, joining, car, adapters));
  const chosen = fewest(wanted, adapters), level = levelled(receiver, joining, car, shelf);
  const parts = [...chosen, ...keepers(kept, adapters, chosen), ...level.parts];
  const lacking = wanted.filter((one) => one.by === "data" && !one.providers.length);
  return {
    parts: [...new Set(parts)].map((item) => item.name),
    to_get: [...(lacking.length ? [say("fit-receiver/get-interface", { functions: list(lacking.map((one) => one.name), "comma") })] : []), ...level.to_get,
      ...kept.filter((one) => one.to_get).map((one) => say("fit-receiver/get-keeper", { duty: one.name }))],
    checks: level.unknown.length ? [untold("sound", say("fit-receiver/sound"), level.unknown)] : [],
    stops: kept.flatMap((one) => one.stops)
  };
}

function systems(joining, car) { return joining.sound.filter((one) => matches(one.clauses, car)); }

function woken(joining, car) { return systems(joining, car).some((one) => one.turn_on === "data"); }

/* The functions that the receiver asks for, and the turn-on of an amplifier that only data wakes. */
function needed(receiver, joining, car) {
  return receiver.gear.needs.concat(woken(joining, car) && !receiver.gear.needs.includes(TURN_ON) ? [TURN_ON] : []);
}

/* By what one car has a function. */
function source(name, joining, car) {
  const had = joining.functions.filter((one) => one.function === name), pins = had.filter((one) => one.by === "pin" && matches(one.clauses, car));
  if (pins.length) return { by: "wire", name: "", disputed: pins.some((one) => one.disputed) };
  const fact = had.find((one) => one.by !== "pin" && matches(one.clauses, car)), disputed = Boolean(fact && fact.disputed);
  if (fact && fact.by !== "unknown") return { by: fact.by, name: fact.name, disputed };
  return name === TURN_ON && woken(joining, car) ? { by: "data", name: joining.turn_on, disputed } : { by: "unknown", name: "", disputed };
}

function need(name, joining, car, adapters) {
  const found = source(name, joining, car), brings = adapters.filter((item) => item.gear.brings.includes(name));
  if (found.disputed) return { function: name, ...found, by: "unknown", providers: brings };
  const able = found.by === "wire" ? brings : found.by === "data" ? brings.filter((item) => item.kind === "interface") : [];
  return { function: name, ...found, providers: able };
}

/* The fewest adapters by greed: always the one that brings most of what is still to be brought; interfaces for data first. */
function fewest(wanted, adapters) {
  const chosen = [];
  [["interface", "data"], ["harness", "wire"]].forEach(([kind, by]) => {
    const left = new Set(wanted.filter((one) => (one.by === by || one.disputed) && one.providers.length).map((one) => one.function));
    const take = (item) => { item.gear.brings.forEach((name) => left.delete(name)); };
    const brought = (item) => item.gear.brings.filter((name) => left.has(name)).length;
    chosen.forEach(take);
    let shelf = adapters.filter((item) => item.kind === kind);
    while (shelf.length && left.size) {
      const best = shelf.reduce((most, item) => brought(item) > brought(most) ? item : most);
      if (!brought(best)) break;
      chosen.push(best);
      take(best);
      shelf = shelf.filter((item) => item !== best);
    }
  });
  return chosen;
}

/* Gear that keeps a duty and is not chosen yet: for each the first that does. */
function keepers(kept, adapters, chosen) {
  const found = [];
  kept.filter((one) => one.by.length).forEach((one) => {
    if (!chosen.concat(found).some((item) => one.by.includes(item))) found.push(...adapters.filter((item) => one.by.includes(item)).slice(0, 1));
  });
  return found;
}

/* Whether the receiver's outputs suit what the car wants. */
function levelled(receiver, joining, car, shelf) {
  const system = systems(joining, car)[0], outputs = receiver.gear.outputs, nothing = { parts: [], to_get: [], unknown: [] };
  if (!system || system.output === "unknown") return { ...nothing, unknown: [say("fit-receiver/lacks-output")] };
  if (!outputs.length) return { ...nothing, unknown: [say("fit-receiver/lacks-outputs")] };
  const unknown = system.amplified && ["", "unknown"].includes(system.turn_on) ? [say("fit-receiver/lacks-turn-on")] : [];
  if (outputs.includes(system.output)) return { ...nothing, unknown };
  const part = shelf.find((item) => item.gear.gives === system.output && (!item.gear.takes || outputs.includes(item.gear.takes)));
  return part ? { ...nothing, unknown, parts: [part] } : { ...nothing, unknown, to_get: [say(`fit-receiver/get-${system.output}`)] };
}

/**
 * What becomes of a duty.
 * @param {HadDuty} duty
 * @param {Gear} receiver
 * @param {Car} car
 * @param {Gear[]} shelf
 */
function outcome(duty, receiver, car, shelf) {
  const said = { name: duty.name, by: [], to_get: false, stops: [] };
  const lost = (becomes) => ({ ...said, stops: duty.grave ? [say("duties/outcome", { duty: duty.name, becomes })] : [] });
  if (duty.kept_by === "stays" || duty.kept_by === "moved") return { ...said, stops: duty.stops.filter((one) => matches(one.clauses, car)).map((one) => one.words) };
  const able = [receiver, ...shelf.filter((item) => ADAPTERS.includes(item.kind))].filter((item) => duty.called.some((id) => item.gear.keeps.includes(id)));
  if (duty.kept_by === "unknown") return lost(able.length ? say("duties/unknown-since", { why: say("duties/said-to-keep", { names: list(able.map((item) => item.name)) }) }) : say("duties/unknown"));
  if (!able.length) return duty.kept_by === "interface" ? { ...lost(say("duties/lost-since", { why: say("duties/needs-interface") })), to_get: true } : lost(say("duties/with-unit"));
  const has = hasLead(duty.lead, receiver, shelf);
  if (has === false) return lost(say("duties/lost-since", { why: say("duties/no-lead") }));
  if (has === null) return lost(say("duties/unknown-since", { why: say("duties/lead-unknown") }));
  return { ...said, by: able };
}

/* Whether the receiver has a lead for a function; null where nobody has recorded its leads. */
function hasLead(name, receiver, shelf) {
  if (!name || receiver.gear.needs.includes(name)) return true;
  const sets = shelf.filter((item) => item.kind === "leads" && item.id === receiver.gear.lead_set);
  return sets.length ? sets.some((item) => item.gear.functions.includes(name)) : null;
}

/**
 * Why a receiver of which only the size is known is no plain replacement in one car.
 * @param {Joining} joining
 * @param {Car} car
 * @param {Gear[]} shelf
 */
export function stopsTyped(joining, car, shelf) {
  /** @type {Gear} */
  const typed = { id: "", name: "", kind: "receiver", gear: { keeps: [], needs: [], outputs: [], lead_set: "" }, fitting: null, suits: [], alters: [], to_get: "", tried: [], doubts: [] };
  return stopsOf(typed, joining, car, shelf);
}

/**
 * Why a receiver of the shelf is none.
 * @param {Gear} receiver
 * @param {Joining} joining
 * @param {Car} car
 * @param {Gear[]} shelf
 */
export function stopsOf(receiver, joining, car, shelf) {
  return joining.duties.filter((duty) => matches(duty.clauses, car)).flatMap((duty) => outcome(duty, receiver, car, shelf).stops);
}
