/* Whether one outline goes through another, or covers it, as `derive/fit/outline.py` has it. */

import { compare, hypot, known, spread, total, typed } from "./fit-margins.js";
import { say } from "./words.js";

/** @import { Face, Shape } from "published" */

/**
 * @param {string} what
 * @param {Shape | null} hole
 */
export function outline(what, hole) {
  if (!hole || hole.shape === "round") {
    const across = typed(hole ? say("fit/diameter", { of: what }) : what, hole ? hole.diameter : null);
    return { shape: "round", width: across, height: across };
  }
  return { shape: hole.shape, ...sized(what, hole.width, hole.height) };
}

/**
 * @param {string} what
 * @param {Face | null} face
 */
export function rectangle(what, face) {
  return { shape: "rectangle", ...sized(what, face ? face.width : null, face ? face.height : null) };
}

function sized(what, width, height) { return { width: typed(say("fit/width", { of: what }), width), height: typed(say("fit/height", { of: what }), height) }; }

export function posed(item, turned) { return turned ? { shape: item.shape, width: item.height, height: item.width } : item; }

export function contain(name, title, inner, outer, room, mend) {
  room = room || [];
  if (inner.shape === "round" && outer.shape === "round") return [compare(name, title, [outer.width], [inner.width].concat(room), mend)];
  const more = corners(inner, outer, room);
  return [["across", inner.width, outer.width], ["up", inner.height, outer.height]].map((row) => compare(name + "-" + row[0], say(`fit/check-${row[0]}`, { check: title }), [row[2]], stretched(row[1], more, room).concat(room), mend));
}

function corners(inner, outer, room) {
  if (inner.shape !== "rectangle" || outer.shape === "rectangle") return 1;
  const extra = total(room);
  const shares = [[inner.width.value, outer.width.value], [inner.height.value, outer.height.value]]
    .filter((pair) => pair[0] !== null && pair[1]).map((pair) => (pair[0] + extra) / pair[1]);
  return shares.length === 2 && Math.max(shares[0], shares[1]) ? hypot(shares) / Math.max(shares[0], shares[1]) : 1;
}

function stretched(need, more, room) {
  if (need.value === null || more === 1) return [need];
  return [need, known(say("fit/corners"), (need.value + total(room)) * (more - 1), spread([need]) * (more - 1))];
}
