/* What the speakers of each channel are to an amplifier, to one output alone and to two that are bridged, as `derive/fit/kinds/amplifier/loads.py` has it. */

import { matches } from "./concerns.js";
import { counted, loadPart, parallel } from "./fit-load.js";
import { DIGITS, capped, changed, each, isLength, made, named, typed, untold } from "./fit-margins.js";
import { round } from "./lengths.js";
import { list, say } from "./words.js";

/** @import { Bay } from "./fit-feed.js" */

/**
 * A check for each channel that it can drive, and what would be so bridged.
 * @param {Bay} bay
 */
export function outputs(bay) {
  const gear = bay.item.gear, { powers } = bay.opening;
  const channels = onChannels(bay).filter(({ name }) => powers.length ? powers.includes(name) : gear.channels > 1 || name === "bass");
  if (!channels.length) return { notes: [say("fit-amplifier/no-load")] };
  const checks = channels.map((one) => alone(one, gear.least_load));
  return {
    checks: !powers.length && checks.some(suits) ? checks.map(otherChannel) : checks,
    notes: channels.filter((one) => gear.channels > 1 && !missing(one).length).map((one) => bridged(one, gear.bridged_load))
  };
}

/* What one car has on each channel of which the record knows, for each side of the car alone. */
function onChannels({ feeding, car, fitted }) {
  const here = feeding.parts.filter((one) => matches(one.clauses, car) && (!one.empty || one.opening in fitted));
  const unplaced = here.filter((one) => !one.channel).map((one) => one.name);
  return [...new Set(here.map((one) => one.channel).filter(Boolean))].map((name) => {
    const sides = ["left", "right"].map((side) => here.filter((one) => one.channel === name && (!one.sides.length || one.sides.includes(side))));
    return { name, unplaced, sides: sides.filter((side) => side.length).map((side) => side.map((one) => loadPart(one, fitted[one.opening]))) };
  });
}

/* What may load a range together, whichever part is asked about: all that is counted, and each alone that has a range of its own. */
function ranges(parts) {
  const sure = parts.filter((part) => !counted(part).includes(false)), most = parts.filter((part) => counted(part).includes(true));
  return [sure, most, ...parts.filter((part) => counted(part).includes(false)).map((part) => [part])].filter((one) => one.length);
}

/* Of the ranges those that load one for sure, although nobody knows how some of it is fed. */
function surely(parts) { return ranges(parts).filter((one) => one.length === 1 || one.every((part) => !counted(part).includes(false))); }

function impedance(part) { return typed(say("fit-amplifier/impedance-of", { of: part.name }), part.impedance); }

function missing(channel) {
  const numbers = channel.sides.flatMap(ranges).flat().map(impedance);
  return [...new Set(numbers.filter((one) => one.value === null).map(named))];
}

function loaded(parts) { return { load: parallel(parts.map((part) => impedance(part).value || 0)), parts }; }

function lowest(channel) { return channel.sides.flatMap(ranges).map(loaded).reduce((least, one) => one.load < least.load ? one : least); }

function alone(channel, least) {
  const title = say("fit-amplifier/load", { channel: say(`channels/${channel.name}`) }), name = `load-${channel.name}`, limit = typed(say("fit-amplifier/least-load"), least);
  const lacking = missing(channel).concat(limit.value === null ? [named(limit)] : []);
  if (lacking.length) return untold(name, title, lacking);
  const check = held(name, title, lowest(channel), changed(limit, { step: 0 }));
  const sure = Math.min(...channel.sides.flatMap(surely).map((parts) => loaded(parts).load));
  if (check.verdict === "fails" && sure >= limit.value) {
    const unfed = new Set(channel.sides.flat().filter((part) => part.fed_through === "unknown").map((part) => part.name));
    return untold(name, title, [say("fit-speaker/how-fed", { names: each([...unfed]) })], check.numbers);
  }
  return capped(check, channel.unplaced.length ? say("fit-speaker/find-channel", { names: list(channel.unplaced, "comma") }) : "");
}

/* One load against the limit, both nominal, so that they are exact. */
function held(name, title, { load, parts }, limit) {
  const margin = round(load - limit.value, DIGITS), numbers = [...parts.map((part) => changed(impedance(part), { step: 0 })), limit];
  return made(name, title, margin >= 0 ? "fits" : "fails", say("fit-amplifier/held", { check: title, load: round(load, 2), least: round(limit.value, 2) }),
    { need: limit.value, have: load, margin, uncertainty: 0, numbers, unit: "ohm" });
}

function suits(check) { return check.verdict === "fits" || check.verdict === "marginal"; }

/* What it cannot drive, where there is something that it can: it may be joined to the others alone. */
function otherChannel(check) { return suits(check) ? check : changed(check, { verdict: "marginal", words: say("fit-amplifier/not-this-channel", { words: check.words }) }); }

/* Whether two outputs may be bridged for one side of a channel. */
function bridged(channel, least) {
  const word = say(`channels/${channel.name}`), { load } = lowest(channel), shown = round(load, 2);
  if (least === "none") return say("fit-amplifier/never-bridged", { channel: word });
  if (!isLength(least)) return say("fit-amplifier/bridged-unknown", { channel: word, load: shown });
  const numbers = { channel: word, load: shown, least: round(least.value, 2) };
  return load >= least.value * (1 - 1e-9) ? say("fit-amplifier/bridged-fits", numbers) : say("fit-amplifier/bridged-fails", numbers);
}
