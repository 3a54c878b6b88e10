/* A measured value: a number, the unit it was read in, and where people read fractions of that, the fraction. */

import { all, make } from "./elements.js";
import { number as spoken, say } from "./words.js";

/** @import { AskedField, AskedUnit } from "published" */

/* A tape is read to the sixteenth. */
const PARTS = 16;
const TYPED = /^(?:(-?[0-9]*[.]?[0-9]*)(?: |$))?(?:([0-9]+\/[0-9]+) )?(.*)$/;

function divisor(one, other) { return other ? divisor(other, one % other) : one; }

/* 1/16, 1/8, 3/16 ... 15/16 */
function fractions() {
  return Array.from({ length: PARTS - 1 }, (_, at) => {
    const common = divisor(at + 1, PARTS);
    return `${(at + 1) / common}/${PARTS / common}`;
  });
}

function part(text) {
  const [top, bottom] = text.split("/").map(Number);
  return bottom ? top / bottom : 0;
}

/** @param {AskedUnit} unit @param {number} value */
function outside(unit, value) {
  const { least, most } = unit;
  if ((least === null || value >= least) && (most === null || value <= most)) return "";
  return say("asked/out-of-range", { least: spoken(least ?? 0), most: most === null ? "…" : spoken(most), unit: unit.name });
}

/** @param {AskedField} field @param {string} said */
export function inputOfQuantity(field, said) {
  const units = field.units || [], known = units.find((one) => said.endsWith(` ${one.name}`));
  const [, whole = "", broken = ""] = (known && TYPED.exec(said)) || [];
  const typed = /** @type {HTMLInputElement} */ (make("input", { type: "text", inputmode: "decimal", autocomplete: "off", maxlength: "12", value: whole, "aria-label": say("asked/value-of", { title: field.title }) }));
  const fraction = /** @type {HTMLSelectElement} */ (make("select", {}, make("option", { value: "" }, say("asked/no-fraction")), ...Array.from(new Set([...fractions(), broken].filter(Boolean)), (one) => make("option", { value: one }, one))));
  fraction.value = broken;
  const beside = make("label", { class: "ut-asked-fraction" }, say("asked/fraction"), fraction);
  const name = `${field.about}-unit`;
  const boxes = units.map((one) => make("label", { class: "ut-pick" }, make("input", { type: "radio", name, value: one.name, checked: one === (known || units[0]) }), one.name));
  const node = make("div", { class: "ut-asked-quantity", change: showFraction },
    make("div", { class: "ut-asked-number" }, typed, units.length > 1 ? make("div", { class: "ut-asked-units", role: "radiogroup", "aria-label": say("asked/unit") }, ...boxes) : make("span", {}, units[0] ? units[0].name : "")), beside);

  function unit() {
    const box = /** @type {HTMLInputElement} */ (node.querySelector("input[type=radio]:checked"));
    return units.find((one) => box && one.name === box.value) || units[0];
  }
  function showFraction() { beside.hidden = !unit().fractions; }
  function text() { return typed.value.trim().replace(",", "."); }
  function broke() { return unit().fractions ? fraction.value : ""; }
  showFraction();

  return {
    node,
    says() { return text() || broke() ? [text(), broke(), unit().name].filter(Boolean).join(" ") : ""; },
    wrong() {
      if (!text() && !broke()) return "";
      if (text() && !/^-?([0-9]+([.][0-9]+)?|[.][0-9]+)$/.test(text())) return say("asked/not-a-number");
      if (broke() && text().includes(".")) return say("asked/fraction-beside-decimals");
      return outside(unit(), Number(text()) + part(broke()));
    },
    clear() {
      typed.value = fraction.value = "";
      all("input[type=radio]", node).forEach((box, place) => { /** @type {HTMLInputElement} */ (box).checked = place === 0; });
      showFraction();
    },
  };
}
