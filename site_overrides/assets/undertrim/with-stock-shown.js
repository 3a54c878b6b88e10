/* What follows from a vehicle and gear in stock, as elements of the page of a visit (publish/facts/with_stock.py). */

import { make } from "./elements.js";
import { say } from "./words.js";

/** @import { Blocker, KitWork, Told } from "published" */

/** A text; one of a record in another language than the page's is marked with it. @param {Told} text */
export function told(text) { return typeof text === "string" ? text : make("span", { lang: text.lang }, text.text); }

/** @param {Told} text */
export function chip(text) { return text ? [" ", make("span", { "class": "ut-chip" }, told(text))] : []; }

export function concerning(clauses, openings = []) {
  return { ...Object.keys(clauses).length ? { "data-clauses": JSON.stringify(clauses) } : {}, ...openings.length ? { "data-openings": openings.join(" ") } : {} };
}

export function bold(text) { return make("b", {}, text); }

/** @param {Blocker} one */
export function blocker(one) {
  return make("li", { "class": `ut-blocker ut-${one.weight}`, "data-blocker": one.id, ...concerning(one.clauses, one.openings) },
    make("span", { "class": "ut-weight" }, say(`blockers/weight-${one.weight}`)), " ",
    make("div", {}, bold(told(one.title)), ...chip(one.when), make("br"), told(one.text)));
}

/** @param {KitWork} kit */
export function kit(kit) {
  const lines = kit.lines.map((line) => make("li", concerning(line.clauses), told(line.text), ...line.moves ? [" ", make("small", {}, `(${line.moves})`)] : [], ...chip(line.when)));
  const [before, after] = lines.length ? ["", ""] : say("kits/see", { kit: "\0" }).split("\0");
  return make("div", { "class": "ut-kit", ...concerning(kit.clauses) }, make("p", {}, before, bold(kit.name), ...chip(kit.when), after), lines.length ? make("ol", {}, ...lines) : null);
}
