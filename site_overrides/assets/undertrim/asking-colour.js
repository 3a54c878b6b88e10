/* The colour of a wire, chosen from what its insulation looks like: the base, then the tracer on it. The letters are those of IEC 60757. */

import { all, make } from "./elements.js";
import { say } from "./words.js";

/** @import { AskedColour } from "published" */

const SVG = "http://www.w3.org/2000/svg";

/* A patch of the colour: paint alone tells nobody which it is, so its letters and name stand beside it. */
function patch(hex) {
  const drawn = document.createElementNS(SVG, "svg"), box = document.createElementNS(SVG, "rect");
  Object.entries({ viewBox: "0 0 40 24", "aria-hidden": "true", class: "ut-asked-patch" }).forEach(([name, value]) => { drawn.setAttribute(name, value); });
  Object.entries({ x: "1", y: "1", width: "38", height: "22", rx: "3", fill: hex, stroke: "currentColor" }).forEach(([name, value]) => { box.setAttribute(name, value); });
  drawn.append(box);
  return drawn;
}

/** @param {string} title @param {AskedColour[]} colours @param {string} name @param {string} said @param {boolean} none */
function swatches(title, colours, name, said, none) {
  const choice = (value, ...inside) => make("label", { class: "ut-pick" }, make("input", { type: "radio", name, value, checked: value === said }), ...inside);
  return make("fieldset", { class: "ut-asked-swatches" }, make("legend", {}, title), ...none ? [choice("", say("asked/no-tracer"))] : [],
    ...colours.map((one) => choice(one.name, patch(one.hex), make("span", {}, make("b", {}, one.letters), " ", one.says))));
}

/** @param {AskedColour[]} colours @param {string} said */
export function inputOfColour(colours, said) {
  const known = (name) => colours.some((one) => one.name === name) ? name : "";
  const [base = "", tracer = ""] = said.split("/").map(known);
  const node = make("div", {}, swatches(say("asked/base"), colours, "asked-base", base, false), swatches(say("asked/tracer"), colours, "asked-tracer", tracer, true));
  const chosen = (name) => {
    const box = /** @type {HTMLInputElement} */ (node.querySelector(`input[name=${name}]:checked`));
    return box ? box.value : "";
  };
  return {
    node,
    says() { return [chosen("asked-base"), chosen("asked-tracer")].filter(Boolean).join("/"); },
    wrong() { return chosen("asked-tracer") && !chosen("asked-base") ? say("asked/base-first") : ""; },
    clear() { all("input", node).forEach((box) => { /** @type {HTMLInputElement} */ (box).checked = box.getAttribute("value") === "" && box.getAttribute("name") === "asked-tracer"; }); },
  };
}
