/* Whether a receiver goes into an opening, as `derive/fit/receiver.py` has it. */

import { compare, isLength, number, typed, untold } from "./fit-margins.js";
import { contain, rectangle } from "./fit-outlines.js";
import { best, decide } from "./fit-verdict.js";
import { both } from "./lengths.js";
import { list, say } from "./words.js";

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
  return [].concat(contain("body", say("fit-receiver/body-in", { what }), rectangle(say("fit-receiver/body"), one.gear.body), rectangle(what, face)), frontChecks(one), [receiverDepth(one)]);
}

function frontChecks(one) {
  const title = say("fit-receiver/front");
  if (!one.gear.trim) return [untold("front", title, [say("fit-receiver/lacks-trim")])];
  return contain("front", title, trimOf(one.gear.trim), clearFront(one.opening, one.gear.trim));
}

function trimOf(trim) { return rectangle(say("fit-receiver/trim"), trim); }

function openingOf(face) { return rectangle(say("fit-receiver/opening"), face); }

/* The room before the dash; where it is not recorded, the opening itself for what is no larger. */
function clearFront(opening, trim) {
  if (opening.clear_front) return rectangle(say("fit-receiver/clear-front"), opening.clear_front);
  const front = trimOf(trim), face = openingOf(opening.face);
  return { shape: "rectangle", width: within(front.width, face.width, say("fit-receiver/clear-width")), height: within(front.height, face.height, say("fit-receiver/clear-height")) };
}

function within(need, have, what) { return need.value === null || have.value === null || need.value > have.value ? typed(what, null) : have; }

function receiverDepth(one) {
  const depth = one.opening.depth, room = isLength(one.gear.plug_room) ? typed(say("fit-receiver/plug-room"), one.gear.plug_room) : one.usual.plug_room;
  const clear = depth && depth.datum !== "face"
    ? number(say("fit-receiver/depth-from-front"), null, 0, depth.datum ? say(`fit/measured-from-${depth.datum}`) : say("fit-receiver/face-not-recorded"))
    : typed(say("fit/clear-depth"), depth ? depth.clear : null);
  return compare("depth", say("fit-receiver/depth"), [clear], [typed(say("fit-receiver/chassis-depth"), one.gear.chassis_depth), room]);
}

function decidedIn(one, checks, face, stock, toGetName, more) {
  return decide(checks, stock ? [stock] : [], toGetName ? [toGetName] : [], receiverNotes(one, face).concat(more || []));
}

function straight(one, kits) {
  const face = one.opening.face, checks = receiverChecks(one, face, say("fit-receiver/opening"));
  if (one.opening.kit === "not-needed") return [decidedIn(one, checks, face)];
  if (one.opening.kit === "needed") return kits.length ? [] : [decidedIn(one, checks, face, "", say("gear-kinds/a-kit"))];
  return [decidedIn(one, checks.concat([untold("kit", say("receiver-shown/kit"), [say("fit-receiver/lacks-kit")])]), face)];
}

function throughKit(one, kit) {
  const inside = kit.gear.contains.length ? [say("fit-receiver/in-the-box", { kit: kit.name, contains: list(kit.gear.contains, "comma") })] : [];
  const checks = receiverChecks(one, kit.gear.opening, say("fit-receiver/opening-of", { kit: kit.name })).concat(kitHeld(one, kit));
  return decidedIn(one, checks, kit.gear.opening, kit.name, "", inside);
}

function kitHeld(one, kit) {
  return contain("kit", say("fit-receiver/kit-within", { kit: kit.name }), rectangle(say("fit-receiver/opening-of", { kit: kit.name }), kit.gear.opening), openingOf(one.opening.face))
    .filter((check) => check.verdict === "fails" || check.verdict === "unknown");
}

function receiverNotes(one, face) {
  const body = rectangle(say("fit-receiver/body"), one.gear.body), opening = openingOf(face);
  let said = [];
  if (!isLength(one.gear.plug_room)) said.push(say("fit-receiver/plugs-not-recorded", { usual: one.usual.plug_room.text }));
  const wide = compare("", "", [opening.width], [body.width]).margin, high = compare("", "", [opening.height], [body.height]).margin;
  if (wide === null || high === null || Math.min(wide, high) < 0) return said;
  said = said.concat(trimmed(one, opening));
  if (Math.min(wide, high) < (one.usual.sleeve.value || 0)) said.push(say("fit-receiver/no-sleeve", { left: both(Math.min(wide, high)), wanted: one.usual.sleeve.text }));
  if (high >= (one.usual.filler.value || 0)) said.push(say("fit-receiver/filler", { left: both(high) }));
  return said;
}

function trimmed(one, opening) {
  if (!one.gear.trim) return [];
  const trim = trimOf(one.gear.trim);
  const over = [["sides", opening.width, trim.width], ["above", opening.height, trim.height]]
    .map((row) => [row[0], compare("", "", [row[1]], [row[2]]).margin || 0]);
  const said = over.filter((row) => row[1] > 0 && row[1] < (one.usual.filler.value || 0))
    .map((row) => say(`fit-receiver/trim-open-${row[0]}`, { left: both(row[1]) }));
  if (!one.opening.clear_front && over.some((row) => row[1] < 0)) {
    said.push(say("fit-receiver/trim-over", { width: both(trim.width.value || 0), height: both(trim.height.value || 0) }));
  }
  return said;
}
