/* Lengths of wire in their colours, as the tables of plugs have them: each is drawn once, as a symbol of the page, and used by its id. */

import { byId } from "./elements.js";

/** @import { WireColour } from "published" */

const SVG = "http://www.w3.org/2000/svg";

function drawn(name, given, ...inside) {
  const made = document.createElementNS(SVG, name);
  Object.keys(given).forEach((key) => { made.setAttribute(key, given[key]); });
  made.append(...inside);
  return made;
}

/**
 * A wire; null for a colour that has no picture.
 * @param {WireColour} colour
 */
export function wirePicture(colour) {
  return colour.id ? drawn("svg", { role: "img", "aria-label": colour.words, "class": "ut-wire" }, drawn("use", { href: "#" + colour.id })) : null;
}

/**
 * The symbols of those colours that the page does not have yet, to stand in it unseen.
 * @param {WireColour[]} colours
 */
export function wireSymbols(colours) {
  const lacking = new Map(colours.filter((one) => one.id && !byId(one.id)).map((one) => [one.id, one]));
  return drawn("svg", { width: "0", height: "0", "aria-hidden": "true", "class": "ut-symbols" }, ...Array.from(lacking.values(), (one) =>
    drawn("symbol", { id: one.id, viewBox: "0 0 48 16" }, ...one.shapes.map((shape) =>
      drawn("path", { d: shape.d, fill: shape.fill, stroke: shape.stroke, "stroke-width": String(shape.width), "stroke-linecap": "round" })))));
}
