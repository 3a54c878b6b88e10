/* The face of a plug with more positions beside each other than a narrow screen has room for: a quarter turn to the right, with every text upright, so that
   nothing goes sideways and a position stays as large as a finger. Where there is room again it stands as it was. */

import { all } from "./elements.js";
import { say } from "./words.js";

const SVG = "http://www.w3.org/2000/svg";
const TO = { top: "right", right: "bottom", bottom: "left", left: "top" };
const LEAST = 240, GAP = 12, LINE = 16, TEXT = 12; // px, as the drawing has its unit: of the words above the plug, beside it for its latch, between two lines, and their size

function drawn(name, given, ...inside) {
  const made = document.createElementNS(SVG, name);
  Object.entries(given).forEach(([key, value]) => { made.setAttribute(key, String(value)); });
  made.append(...inside);
  return made;
}

function words(text, x, y, weight) { return drawn("text", { x, y, "font-size": TEXT, "font-weight": weight, "text-anchor": "middle", "aria-hidden": "true" }, text); }

/* Where a position stands, as the drawing has moved it. */
function placeOf(cell) { return /translate\(([\d.]+) ([\d.]+)\)/.exec(cell.getAttribute("transform")).slice(1).map(Number); }

/* How wide or high a position is. */
function measure(cell, side) { return Number(cell.querySelector("rect").getAttribute(side)); }

/* A solid tongue on its edge, a third of it long. */
function tongue(edge, x, y, width, height) {
  const thick = GAP - 4;
  const boxes = { left: [x - thick, y + height / 3, thick, height / 3], right: [x + width, y + height / 3, thick, height / 3], top: [x + width / 3, y - thick, width / 3, thick], bottom: [x + width / 3, y + height, width / 3, thick] };
  if (!(edge in boxes)) return [];
  const [left, top, wide, high] = boxes[edge];
  return [drawn("rect", { x: left, y: top, width: wide, height: high, fill: "currentColor" })];
}

/**
 * The same plug a quarter turn to the right.
 * @param {Element} svg
 * @param {string} latch the edge that the latch is on
 */
function turned(svg, latch) {
  const cells = Array.from(svg.querySelectorAll(":scope > [transform]")), places = cells.map(placeOf);
  const wide = measure(cells[0], "width"), tall = measure(cells[0], "height");
  const left = Math.min(...places.map(([x]) => x)), top = Math.min(...places.map(([, y]) => y));
  const rows = Math.round((Math.max(...places.map(([, y]) => y)) - top) / tall) + 1, columns = Math.round((Math.max(...places.map(([x]) => x)) - left) / wide) + 1;
  const width = Math.max(rows * wide + 2 * GAP, LEAST), begin = (width - rows * wide) / 2, head = 3 * LINE + 2 + GAP, edge = TO[latch] || latch;
  const title = svg.querySelector("text").cloneNode(true), made = /** @type {SVGElement} */ (svg.cloneNode(false));
  const moved = cells.map((cell, index) => {
    const one = /** @type {Element} */ (cell.cloneNode(true)), [x, y] = places[index];
    one.setAttribute("transform", `translate(${begin + (rows - 1 - Math.round((y - top) / tall)) * wide} ${head + Math.round((x - left) / wide) * tall})`);
    return one;
  });
  const height = head + columns * tall + GAP;
  Object.entries({ viewBox: `0 0 ${width} ${height}`, width: `${width}px`, height: `${height}px` }).forEach(([key, value]) => { made.setAttribute(key, value); });
  /** @type {Element} */ (title).setAttribute("x", String(width / 2));
  made.append(title, words(say("plugs/turned"), width / 2, 2 * LINE, 400), words(say(`drawings/latch-${edge}`), width / 2, 3 * LINE, 400),
    ...tongue(edge, begin, head, rows * wide, columns * tall),
    drawn("rect", { x: begin, y: head, width: rows * wide, height: columns * tall, fill: "none", stroke: "currentColor", "stroke-width": 2 }), ...moved);
  return made;
}

/**
 * Has the faces of plugs stand as there is room for them.
 * @param {ParentNode} page
 */
export function turnWhereNarrow(page) {
  const every = all(".ut-face", page).map((box) => {
    const holder = /** @type {HTMLElement} */ (box.firstElementChild);
    return { box, holder, plain: holder.firstElementChild, other: /** @type {Element | null} */ (null) };
  });
  const settle = (one) => {
    const narrow = one.box.clientWidth > 0 && one.box.clientWidth < parseFloat(one.holder.dataset.least);
    if (narrow && !one.other) one.other = turned(one.plain, one.holder.dataset.latch);
    const wanted = narrow ? one.other : one.plain;
    if (one.holder.firstElementChild === wanted) return;
    one.holder.style.minWidth = narrow ? "0" : one.holder.dataset.least;
    one.holder.style.maxWidth = narrow ? `${/** @type {Element} */ (wanted).getAttribute("width")}` : one.holder.dataset.most;
    one.holder.replaceChildren(wanted);
  };
  const watch = new ResizeObserver((seen) => { seen.forEach(({ target }) => { settle(every.find((one) => one.box === target)); }); });
  every.forEach((one) => { watch.observe(one.box); });
}
