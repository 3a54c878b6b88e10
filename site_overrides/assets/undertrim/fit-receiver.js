/* Whether a receiver goes into an opening, as `derive/fit/receiver.py` has it. */

import { compare, isLength, number, typed, untold } from "./fit-margins.js";
import { contain, rectangle } from "./fit-outlines.js";
import { best, decide } from "./fit-verdict.js";
import { both } from "./lengths.js";

/** @import { KitSizes, ReceiverPlace, ReceiverSizes, Usual } from "published" */

/**
 * @param {ReceiverSizes} gear
 * @param {ReceiverPlace} opening
 * @param {Array<{ name: string, gear: KitSizes }>} kits
 * @param {Usual} usual
 */
export function receiver(gear, opening, kits, usual) {
  const one = { gear, opening, usual };
  return best(straight(one, kits).concat(kits.map((kit) => throughKit(one, kit))));
}

function receiverChecks(one, face, what) {
  return [].concat(contain("body", "Body in the " + what, rectangle("body", one.gear.body), rectangle(what, face)), frontChecks(one), [receiverDepth(one)]);
}

function frontChecks(one) {
  if (!one.gear.trim) return [untold("front", "Trim before the dash", ["trim or screen before the dash (not recorded)"])];
  return contain("front", "Trim before the dash", rectangle("trim", one.gear.trim), clearFront(one.opening, one.gear.trim));
}

/* The room before the dash; where it is not recorded, the opening itself for what is no larger. */
function clearFront(opening, trim) {
  if (opening.clear_front) return rectangle("clear front", opening.clear_front);
  const front = rectangle("trim", trim), face = rectangle("opening", opening.face);
  return { shape: "rectangle", width: within(front.width, face.width, "clear room in front, width"), height: within(front.height, face.height, "clear room in front, height") };
}

function within(need, have, what) { return need.value === null || have.value === null || need.value > have.value ? typed(what, null) : have; }

function receiverDepth(one) {
  const depth = one.opening.depth, room = isLength(one.gear.plug_room) ? typed("plug room", one.gear.plug_room) : one.usual.plug_room;
  const clear = depth && depth.datum !== "face"
    ? number("depth from the front of the dash", null, 0, depth.datum ? "measured from the " + depth.datum : "from which face it was measured is not recorded")
    : typed("clear depth", depth ? depth.clear : null);
  return compare("depth", "Depth behind the chassis", [clear], [typed("chassis depth", one.gear.chassis_depth), room]);
}

function decidedIn(one, checks, face, stock, toGetName, more) {
  return decide(checks, stock ? [stock] : [], toGetName ? [toGetName] : [], receiverNotes(one, face).concat(more || []));
}

function straight(one, kits) {
  const face = one.opening.face, checks = receiverChecks(one, face, "opening");
  if (one.opening.kit === "not-needed") return [decidedIn(one, checks, face)];
  if (one.opening.kit === "needed") return kits.length ? [] : [decidedIn(one, checks, face, "", "a kit")];
  return [decidedIn(one, checks.concat([untold("kit", "Dash kit", ["whether a kit is needed (unknown)"])]), face)];
}

function throughKit(one, kit) {
  const inside = kit.gear.contains.length ? ["in the box of " + kit.name + ": " + kit.gear.contains.join(", ")] : [];
  const checks = receiverChecks(one, kit.gear.opening, "opening of " + kit.name).concat(kitHeld(one, kit));
  return decidedIn(one, checks, kit.gear.opening, kit.name, "", inside);
}

function kitHeld(one, kit) {
  return contain("kit", "Opening of " + kit.name + " within the opening of the car", rectangle("opening of " + kit.name, kit.gear.opening), rectangle("opening", one.opening.face))
    .filter((check) => check.verdict === "fails" || check.verdict === "unknown");
}

function receiverNotes(one, face) {
  const body = rectangle("body", one.gear.body), opening = rectangle("opening", face);
  let said = [];
  if (!isLength(one.gear.plug_room)) said.push("the room that its plugs need is not recorded: reckoned with the usual " + one.usual.plug_room.text);
  const wide = compare("", "", [opening.width], [body.width]).margin, high = compare("", "", [opening.height], [body.height]).margin;
  if (wide === null || high === null || Math.min(wide, high) < 0) return said;
  said = said.concat(trimmed(one, opening));
  if (Math.min(wide, high) < (one.usual.sleeve.value || 0)) said.push("no room for a sleeve: " + both(Math.min(wide, high)) + " left over, " + one.usual.sleeve.text + " wanted");
  if (high >= (one.usual.filler.value || 0)) said.push(both(high) + " of height left over: a filler or a pocket closes it");
  return said;
}

function trimmed(one, opening) {
  if (!one.gear.trim) return [];
  const trim = rectangle("trim", one.gear.trim);
  const over = [["at the sides", opening.width, trim.width], ["above and below", opening.height, trim.height]]
    .map((row) => [row[0], compare("", "", [row[1]], [row[2]]).margin || 0]);
  const said = over.filter((row) => row[1] > 0 && row[1] < (one.usual.filler.value || 0))
    .map((row) => "the trim leaves " + both(row[1]) + " open " + row[0]);
  if (!one.opening.clear_front && over.some((row) => row[1] < 0)) {
    said.push("the trim is " + both(trim.width.value || 0) + " × " + both(trim.height.value || 0) +
      ": measure the room before the vents and switches of the car");
  }
  return said;
}
