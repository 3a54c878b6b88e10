/* The load of a channel against what drives it. */

import { DIGITS, capped, changed, each, isLength, made, named, number, typed, untold } from "./fit-margins.js";
import { round } from "./lengths.js";
import { list, say } from "./words.js";

/** @import { Given, Load, ShelfGear } from "published" */

/* As `derive/fit/load.py` has it; `joined` is what is on the channel, the speaker itself first. */

/**
 * What drives a place and is joined to it, once for each thing that may drive it, with what else of a visit is fitted.
 * @param {Load} one
 * @param {Record<string, ShelfGear>} fitted gear by opening
 */
export function driven(one, fitted = {}) {
  const [first, ...others] = one.parts, there = (part) => !part.empty || part.opening in fitted;
  const parts = [loadPart(first, null, true), ...others.filter(there).map((part) => loadPart(part, fitted[part.opening]))];
  const unplaced = one.unplaced.filter((part) => part === one.unplaced[0] && part.opening === first.opening || there(part)).map((part) => part.name);
  return drivers(one, fitted).map((driver) => ({ ...driver, parts, unplaced }));
}

export function loadPart(part, gear, fresh = Boolean(gear)) {
  return { name: part.name, impedance: gear ? gear.gear.impedance : part.impedance, factory: part.impedance, fed_through: fresh ? part.then_fed_through : part.fed_through };
}

/* A factory amplifier stays when the radio goes; new amplifiers drive in place of both, each its own channels. */
function drivers(one, fitted) {
  const added = Object.keys(fitted).filter((opening) => fitted[opening].kind === "amplifier" && powers(one, opening, fitted[opening])).map((opening) => fitted[opening]);
  if (added.length) return added.map((item) => ({ what: item.name, least: item.gear.least_load }));
  const radio = Object.values(fitted).find((item) => item.kind === "receiver"), fresh = radio && { what: radio.name, least: radio.gear.least_load };
  if (!one.systems.length) return [fresh || { what: say("fit-speaker/driver"), least: null }];
  return one.systems.map((system) => system.by_radio ? fresh || { what: say("fit-speaker/factory-radio"), least: null } : system.amplified ? { what: say("fit-speaker/factory-amplifier"), least: system.least } : fresh || { what: say("fit-speaker/factory-radio"), least: system.least });
}

/* Whether an amplifier in a place drives the channel: where its place does not say, one of a single output only the bass. */
function powers(one, opening, amplifier) {
  const place = one.amplifiers.find((each) => each.opening === opening);
  return place && place.drives !== null ? place.drives : amplifier.gear.channels > 1 || one.channel === "bass";
}

/**
 * @param {{ impedance: Given }} gear
 * @param {ReturnType<typeof driven>[0]} joined
 */
export function load(gear, joined) {
  const title = say("fit-speaker/load-on", { driver: joined.what }), parts = joined.parts.slice();
  parts[0] = changed(parts[0], { impedance: gear.impedance });
  const sets = joinedSets(parts), missing = [];
  sets.forEach((set) => {
    set.forEach((part) => {
      const said = typed(say("fit-speaker/impedance-of", { of: part.name }), part.impedance);
      if (said.value === null && missing.indexOf(named(said)) < 0) missing.push(named(said));
    });
  });
  if (missing.length) return untold("load", title, missing);
  const limit = loadLimit(joined, sets), found = sets.map((set) => heldLoad(title, set, limit));
  let lowest = found.reduce((least, one) => one.have < least.have ? one : least);
  if (limit.value === null || (limit.lacking && lowest.verdict === "fails")) return untold("load", title, [named(typed(leastOf(joined), joined.least))], lowest.numbers);
  const verdicts = found.map((one) => one.verdict);
  if (verdicts.indexOf("fits") >= 0 && verdicts.indexOf("fails") >= 0) {
    const unfed = parts.filter((part) => part.fed_through === "unknown").map((part) => part.name);
    return untold("load", title, [say("fit-speaker/how-fed", { names: each(unfed) })], lowest.numbers);
  }
  lowest = capped(lowest, limit.lacking ? say("fit-speaker/look-up") : "");
  return capped(lowest, joined.unplaced.length ? say("fit-speaker/find-channel", { names: list(joined.unplaced, "comma") }) : "");
}

export function counted(part) {
  if (part.fed_through === "unknown") return [false, true];
  return [part.fed_through === "" || part.fed_through === "direct"];
}

function joinedSets(parts) {
  const first = parts[0], others = parts.slice(1);
  const sure = [first].concat(others.filter((part) => counted(part).indexOf(false) < 0));
  const most = [first].concat(others.filter((part) => counted(part).indexOf(true) >= 0));
  const together = sure.length === most.length ? [sure] : [sure, most];
  const own = counted(first);
  return (own.indexOf(false) >= 0 ? [[first]] : []).concat(own.indexOf(true) >= 0 ? together : []);
}

function leastOf(joined) { return say("fit-speaker/least-load", { driver: joined.what }); }

function loadLimit(joined, sets) {
  const label = leastOf(joined);
  if (isLength(joined.least)) return number(label, joined.least.value, 0, joined.least.shown);
  const said = typed(label, joined.least);
  if (!sets.every((set) => set.every((part) => isLength(part.factory)))) return said;
  const made = Math.min(...sets.map((set) => parallel(set.map((part) => part.factory.value))));
  return changed(said, { value: made, text: say("fit-speaker/factory-load", { how: said.text, load: ohms(made) }), lacking: true });
}

function heldLoad(title, set, limit) {
  const together = parallel(set.map((part) => part.impedance.value)), least = limit.value || 0;
  const margin = round(together - least, DIGITS), allowed = limit.lacking ? say("fit-speaker/lacking-load", { load: limit.text }) : say("fit-speaker/least", { load: ohms(least) });
  const numbers = set.map((part) => number(say("fit-speaker/impedance"), part.impedance.value, 0, part.impedance.shown)).concat([limit]);
  return made("load", title, margin >= 0 ? "fits" : "fails", say("fit-speaker/load", { check: title, load: ohms(together), allowed }),
    { need: least, have: together, margin, uncertainty: 0, numbers, unit: "ohm" });
}

export function parallel(loads) {
  return loads.every(Boolean) ? 1 / loads.reduce((all, one) => all + 1 / one, 0) : 0;
}

function ohms(value) { return say("fit-speaker/ohms", { value: round(value, 2) }); }
