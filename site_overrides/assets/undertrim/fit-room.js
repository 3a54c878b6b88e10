/* The depth behind a speaker, the room before it, and on what it sits, as `derive/fit/room.py` and `seats.py` have it. */

import { capped, changed, compare, hypot, isLength, known, notRecorded, number, remaining, total, typed } from "./fit-margins.js";
import { both } from "./lengths.js";
import { list, say } from "./words.js";

/** @import { SpeakerPlace, SpeakerSizes, Usual } from "published" */

/**
 * @param {SpeakerSizes} speaker
 * @param {SpeakerPlace} opening
 * @param {Usual} usual
 */
export function roomFor(speaker, opening, usual) {
  const depth = opening.depth || { clear: "unknown", datum: "", over: "", to: "", obstruction: "", leans: null };
  return {
    clear: typed(say("fit/clear-depth"), depth.clear),
    behind: [typed(say("fit-speaker/mounting-depth"), speaker.depth)].concat(tilted(speaker, depth, usual.bounds), [rear(depth, usual)]),
    front: typed(say("fit-speaker/room-to-grille"), opening.room_to_grille),
    before: [typed(say("fit-speaker/protrusion"), speaker.protrusion), usual.grille],
    gasket: gasket(speaker, usual.bounds),
    reason: list([reason(depth, opening), unseen(opening)].filter(Boolean), "semicolon")
  };
}

function gasket(speaker, bounds) {
  if (speaker.gasket === "none") return [];
  const found = typed(say("fit-speaker/gasket"), speaker.gasket);
  return [found.value === null ? between(found, bounds.gasket) : found];
}

/* A length that nobody recorded, from 0 to so many mm: reckoned as 0. */
function between(missing, most) { return changed(missing, { value: 0, more: most, lacking: true }); }

function tilted(speaker, depth, bounds) {
  const lean = depth.leans, of = depth.to || say("fit-speaker/thing-behind");
  if (lean === "none") return [];
  const magnet = typed(say("fit-speaker/magnet"), speaker.magnet);
  if (!isLength(lean)) {
    const missing = typed(say("fit-speaker/lean", { of }), lean);
    return magnet.value === null ? [missing, magnet] : [between(missing, magnet.value / 2 * Math.tan(bounds.lean * (Math.PI / 180)))];
  }
  if (magnet.value === null) return [magnet];
  const radius = magnet.value / 2, angle = lean.value * (Math.PI / 180), coarse = lean.step * (Math.PI / 180);
  const step = hypot([magnet.step / 2 * Math.tan(angle), radius * coarse / Math.pow(Math.cos(angle), 2)]);
  return [known(say("fit-speaker/lean-at-the-edge", { of, lean: lean.text }), radius * Math.tan(angle), step)];
}

function rear(depth, usual) { return toGlass(depth) === "no" ? usual.rear : usual.rear_glass; }

/* Whether the window, or what moves with it, is the first thing behind; unknown where nobody recorded it. */
export function toGlass(depth) {
  if (depth.over === "no-glass") return "no";
  if (depth.obstruction === "glass") return "yes";
  return !depth.obstruction || depth.obstruction === "unknown" ? "unknown" : "no";
}

function reason(depth, opening) {
  if (depth.over === "glass-down") return say("fit-speaker/glass-down");
  if (!depth.over && (opening.in_a_door || !opening.area)) return say("fit-speaker/glass-not-recorded");
  return "";
}

export function depthCheck(room, height) {
  return capped(compare("depth", say("fit-speaker/depth"), [room.clear].concat(height, room.gasket), room.behind, "spacer"), room.reason);
}

export function grilleCheck(room, height) { return compare("grille", say("speaker-shown/grille"), [room.front], height.concat(room.gasket, room.before)); }

export function spacerWindow(room, seat) {
  const raised = [seat.offset].concat(room.gasket);
  const least = remaining(total(room.behind), total([room.clear].concat(raised)));
  return [Math.max(0, least), remaining(total([room.front]), total(raised.concat(room.before)))];
}

export function spacerCheck(room, seat) {
  const free = depthCheck(room, [seat.offset]).margin;
  if (free === null || free >= 0) return grilleCheck(room, [seat.offset]);
  return capped(compare("spacer", say("fit-speaker/spacer"), [room.front, room.clear], room.before.concat(room.behind)), room.reason);
}

/* What is to be got (`spacer` or `plate`), with its window of heights. */
export function heights(what, pair) {
  return pair[0] > 0 ? say(`fit-speaker/get-${what}-between`, { least: both(pair[0]), most: both(pair[1]) }) : say(`fit-speaker/get-${what}-up-to`, { most: both(pair[1]) });
}

function seat(offset, note, name) { return { offset, note: note || "", name: name || say("fit-speaker/on-face") }; }

function onBracket(offset) { return seat(offset, say("fit-speaker/bracket-stays-under"), say("fit-speaker/on-bracket")); }

function unseen(opening) {
  return !opening.factory_spacer || opening.factory_spacer === "unknown" ? say("fit-speaker/bracket-unseen") : "";
}

/** @param {SpeakerPlace} opening */
export function seatsOf(opening) {
  const datum = opening.depth ? opening.depth.datum : "", height = opening.factory_spacer;
  const face = known(say("fit-speaker/mounting-face"), 0), off = say("fit-speaker/bracket-stays-off"), kept = say("fit-speaker/bracket-kept");
  if (datum === "skin") {
    if (isLength(height)) return [seat(known(say("fit-speaker/bracket-left-off"), 0), off), onBracket(typed(kept, height))];
    return [seat(face, height === "none" ? "" : say("fit-speaker/bracket-unseen-off"))];
  }
  if (datum === "bracket") {
    if (isLength(height)) {
      const away = say("fit-speaker/minus", { length: height.shown });
      return [seat(number(say("fit-speaker/bracket-taken-away"), -height.value, height.step, away), off), onBracket(known(kept, 0))];
    }
    return [seat(face, height === "none" ? "" : say("fit-speaker/bracket-unseen-under"))];
  }
  return [seat(number(say("fit-speaker/face-against-datum"), null, 0, datum ? say(`fit/measured-from-${datum}`) : notRecorded()))];
}
