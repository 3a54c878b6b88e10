/* The depth behind a speaker, the room before it, and on what it sits, as `derive/fit/room.py` and `seats.py` have it. */

import { capped, changed, compare, hypot, isLength, known, number, remaining, total, typed } from "./fit-margins.js";
import { both } from "./lengths.js";

/** @import { SpeakerPlace, SpeakerSizes, Usual } from "published" */

/**
 * @param {SpeakerSizes} speaker
 * @param {SpeakerPlace} opening
 * @param {Usual} usual
 */
export function roomFor(speaker, opening, usual) {
  const depth = opening.depth || { clear: "unknown", datum: "", over: "", to: "", obstruction: "", leans: null };
  return {
    clear: typed("clear depth", depth.clear),
    behind: [typed("mounting depth", speaker.depth)].concat(tilted(speaker, depth, usual.bounds), [rear(depth, usual)]),
    front: typed("room to the grille", opening.room_to_grille),
    before: [typed("protrusion of the cone", speaker.protrusion), usual.grille],
    gasket: gasket(speaker, usual.bounds),
    reason: [reason(depth, opening), unseen(opening)].filter(Boolean).join("; ")
  };
}

function gasket(speaker, bounds) {
  if (speaker.gasket === "none") return [];
  const found = typed("gasket, pressed flat", speaker.gasket);
  return [found.value === null ? between(found, bounds.gasket) : found];
}

/* A length that nobody recorded, from 0 to so many mm: reckoned as 0. */
function between(missing, most) { return changed(missing, { value: 0, more: most, lacking: true }); }

function tilted(speaker, depth, bounds) {
  const lean = depth.leans, what = (depth.to || "the thing behind").toLowerCase();
  if (lean === "none") return [];
  const magnet = typed("magnet diameter", speaker.magnet);
  if (!isLength(lean)) {
    const missing = typed("lean of " + what, lean);
    return magnet.value === null ? [missing, magnet] : [between(missing, magnet.value / 2 * Math.tan(bounds.lean * (Math.PI / 180)))];
  }
  if (magnet.value === null) return [magnet];
  const radius = magnet.value / 2, angle = lean.value * (Math.PI / 180), coarse = lean.step * (Math.PI / 180);
  const step = hypot([magnet.step / 2 * Math.tan(angle), radius * coarse / Math.pow(Math.cos(angle), 2)]);
  return [known("lean of " + what + ", " + lean.text + ", at the edge of the magnet", radius * Math.tan(angle), step)];
}

function rear(depth, usual) { return toGlass(depth) === "no" ? usual.rear : usual.rear_glass; }

/* Whether the window, or what moves with it, is the first thing behind; unknown where nobody recorded it. */
export function toGlass(depth) {
  if (depth.over === "no-glass") return "no";
  if (depth.obstruction === "glass") return "yes";
  return !depth.obstruction || depth.obstruction === "unknown" ? "unknown" : "no";
}

function reason(depth, opening) {
  if (depth.over === "glass-down") return "measured with the glass down only: measure over the whole travel";
  if (!depth.over && (opening.in_a_door || !opening.area)) return "not recorded whether the glass was moved: measure over the whole travel";
  return "";
}

export function depthCheck(room, height) {
  return capped(compare("depth", "Depth behind the flange", [room.clear].concat(height, room.gasket), room.behind, "spacer"), room.reason);
}

export function grilleCheck(room, height) { return compare("grille", "Room to the grille", [room.front], height.concat(room.gasket, room.before)); }

export function spacerWindow(room, seat) {
  const raised = [seat.offset].concat(room.gasket);
  const least = remaining(total(room.behind), total([room.clear].concat(raised)));
  return [Math.max(0, least), remaining(total([room.front]), total(raised.concat(room.before)))];
}

export function spacerCheck(room, seat) {
  const free = depthCheck(room, [seat.offset]).margin;
  if (free === null || free >= 0) return grilleCheck(room, [seat.offset]);
  return capped(compare("spacer", "Height for a spacer", [room.front, room.clear], room.before.concat(room.behind)), room.reason);
}

export function heights(pair) { return pair[0] > 0 ? both(pair[0]) + " to " + both(pair[1]) + " high" : "up to " + both(pair[1]) + " high"; }

const BRACKET = "factory bracket";
const KEPT = "the factory bracket stays under the new speaker: see that its hole and screws take it";
const UNSEEN = "the height of the factory bracket is not recorded";
const OFF = "the factory bracket stays off";

function seat(offset, note, name) { return { offset, note: note || "", name: name || "on the mounting face" }; }

function unseen(opening) {
  return !opening.factory_spacer || opening.factory_spacer === "unknown" ? UNSEEN + ": measure it, or write 'none'" : "";
}

/** @param {SpeakerPlace} opening */
export function seatsOf(opening) {
  const datum = opening.depth ? opening.depth.datum : "", height = opening.factory_spacer;
  if (datum === "skin") {
    if (isLength(height)) return [seat(known(BRACKET + ", left off", 0), OFF), seat(typed(BRACKET + ", kept", height), KEPT, "on the factory bracket")];
    return [seat(known("mounting face", 0), height === "none" ? "" : UNSEEN + ": it is reckoned as left off")];
  }
  if (datum === "bracket") {
    if (isLength(height)) {
      return [seat(number(BRACKET + ", taken away", -height.value, height.step, "−" + height.shown), OFF),
        seat(known(BRACKET + ", kept", 0), KEPT, "on the factory bracket")];
    }
    return [seat(known("mounting face", 0), height === "none" ? "" : UNSEEN + ": " + KEPT)];
  }
  return [seat(number("mounting face against the face that the depth is measured from", null, 0, datum ? "measured from the " + datum : "not recorded"))];
}
