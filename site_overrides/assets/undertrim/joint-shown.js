/* Joints and duties of a vehicle with gear in stock, as elements of the page of its wiring (publish/facts/with_stock.py). */

import { make } from "./elements.js";
import { wirePicture } from "./wire-picture.js";
import { bold, chip, concerning, told } from "./with-stock-shown.js";
import { say } from "./words.js";

/** @import { StockDuty, StockEnd, StockJoint, StockRow, StockTable, WireColour } from "published" */

/** @param {StockDuty} one */
export function duty(one) {
  return make("div", concerning(one.clauses), make("dt", {}, one.name, ...chip(one.when)),
    make("dd", {}, told(one.becomes), ...one.conflicts.flatMap((words) => [" ", make("span", { "class": "ut-conflict" }, bold(words))])));
}

/** @param {WireColour} colour */
function wired(colour) {
  const picture = wirePicture(colour);
  return [...picture ? [" ", picture] : [], " ", colour.words, ...colour.may_be ? [" ", make("small", {}, say("plugs/may-be", { others: colour.may_be }))] : []];
}

/**
 * @param {StockEnd} one
 * @param {WireColour[]} colours
 */
function end(one, colours) {
  return [one.pin ? make("a", { href: "#" + one.pin }, one.at) : one.at, ...one.colour === null ? [] : wired(colours[one.colour]), ...one.more ? [", ", one.more] : []];
}

/**
 * @param {StockEnd[]} every
 * @param {WireColour[]} colours
 */
function ends(every, colours) { return every.flatMap((one, place) => [...place ? [make("br")] : [], ...end(one, colours)]); }

/**
 * @param {StockRow} one
 * @param {WireColour[]} colours
 */
function row(one, colours) {
  const cell = (label, inside, kind = "") => make("td", { ...kind ? { "class": kind } : {}, "data-label": say(label) }, ...inside);
  const what = [...one.why.flatMap((why) => [bold(why + "."), " "]), one.said, ...one.do ? [...one.said ? [": "] : [], bold(one.do)] : []];
  return make("tr", { "class": `ut-row-${one.state}`, "data-row": one.id }, make("th", { scope: "row" }, one.state_words),
    cell("joint/column-function", [one.function]), cell("joint/column-car", ends(one.car, colours), "ut-end"),
    cell("joint/column-adapter", one.contacts.length ? ends(one.contacts, colours) : [one.through], "ut-end"),
    cell("joint/column-lead", one.lead ? end(one.lead, colours) : [], "ut-end"), cell("joint/column-do-short", what));
}

const COLUMNS = ["joint/column-state", "joint/column-function", "joint/column-car", "joint/column-adapter", "joint/column-lead", "joint/column-do"];

/**
 * @param {StockTable} one
 * @param {WireColour[]} colours
 */
function table(one, colours) {
  const head = [["joint/head-harness", one.harness], ["joint/head-between", one.between], ["joint/head-wants", one.wants]].filter(([, text]) => text);
  const between = (every) => every.flatMap((inside, place) => [...place ? ["; "] : [], ...inside]);
  return make("section", one.cars.length ? { "data-cars": JSON.stringify(one.cars) } : {},
    one.cars_words ? make("h4", {}, told(one.cars_words)) : null,
    make("p", {}, ...head.flatMap(([code, text]) => [bold(say(code)), " ", text, ". "]), one.counts, "."),
    one.notes.length ? make("ul", { "class": "ut-notes" }, ...one.notes.map((note) => make("li", {}, note))) : null,
    one.extra.length ? make("p", {}, bold(say("joint/head-extra")), " ", ...between(one.extra.map((text) => [text]))) : null,
    one.missing.length ? make("p", {}, bold(say("joint/head-missing")), " ", ...between(one.missing.map((lacking) => [make("a", { href: "#" + lacking.pin }, lacking.at), " (", lacking.more, ")"]))) : null,
    make("table", { "class": "ut-table ut-rows" }, make("thead", {}, make("tr", {}, ...COLUMNS.map((code) => make("th", { scope: "col" }, say(code))))),
      make("tbody", {}, ...one.rows.map((each) => row(each, colours)))));
}

/**
 * @param {StockJoint} one
 * @param {WireColour[]} colours
 */
export function joint(one, colours) {
  return make("details", { "class": "ut-joint", id: `joint-${one.opening}-${one.leads}`, "data-openings": one.opening },
    make("summary", {}, bold(one.name), ...one.receivers ? [" ", make("small", {}, say("joint/comes-with", { receivers: one.receivers }))] : []),
    one.note ? make("p", {}, told(one.note)) : null, ...one.tables.map((each) => table(each, colours)));
}
