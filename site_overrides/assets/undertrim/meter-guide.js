/* The meter guide of a plug: pick pin and state, type a reading, see what it agrees with and what to measure next.
   Each guide is a `.ut-meter` with its plug as JSON; js has the logic. Either the page holds the table in
   `#ut-meter-table`, or a script after this one calls undertrimMeter.start() with it. */

import { make } from "./elements.js";
import { consider, next, weigh } from "./meter-functions.js";
import { Misread, read } from "./meter-readings.js";
import { place, suspicions } from "./meter-suspects.js";
import { measured, names, ranged } from "./meter-words.js";
import { list, say } from "./words.js";

/** @import { MeterPlug, MeterTable } from "published" */

const WHY = { "": "meter/why", power: "meter/why-power", live: "meter/why-live" };

function listOf(lines) {
  const list = make("ul");
  lines.forEach((line) => { list.appendChild(make("li", {}, line)); });
  return list;
}

/** @param {MeterTable} table */
function reason(table, reading, finding) {
  const kind = table.kind[reading.kind];
  if (!finding.band) return say("meter-guide/nothing", { reading: reading.text, why: say(WHY[finding.why]) });
  const band = say("meter/band", { band: finding.band.words, range: ranged(finding.band, kind.unit) });
  const state = table.state[reading.state].words;
  const expected = say("meter/expected", { kind: kind.words, state, band, sure: table.sure[finding.sure] });
  return say(finding.verdict === "agrees" ? "meter-guide/agrees" : "meter-guide/disagrees", { reading: reading.text, expected });
}

/** @param {MeterTable} table */
function grouped(table, found) {
  const alike = {};
  found.forEach((one) => { (alike[one.pattern] = alike[one.pattern] || []).push(one.function); });
  return Object.keys(alike).map((pattern) => say("meter/candidate", { functions: names(table, alike[pattern]), pattern: table.pattern[pattern].words }));
}

/** @param {MeterTable} table */
function results(table, readings, pin) {
  const recorded = pin ? consider(table, pin.function, readings, pin.behaves, pin.supply) : null;
  const found = suspicions(table, readings, recorded);
  const stops = found.filter((one) => one.stop);
  const parts = stops.map((one) => make("p", { class: "ut-stop" }, say("meter/stop", { readings: list(one.readings, "comma"), what: one.words, do: one.do })));
  if (recorded && readings.length) {
    parts.push(make("p", { class: "ut-standing" }, say(`meter-guide/record-${recorded.standing}`, { function: pin.words })));
    parts.push(listOf(readings.map((reading, index) => reason(table, reading, recorded.findings[index]))));
  } else if (recorded) {
    parts.push(make("p", {}, say("meter-guide/by-record", { function: pin.words })));
  }
  const named = [alsoMaybe(found), readings.length ? others(table, weigh(table, readings), recorded) : []];
  if (stops.length) named.reverse(); // a speaker comes second behind an igniter
  return parts.concat(
    named[0], named[1],
    stops.length ? [make("p", {}, say("meter/measure-no-more"))] : asking(table, readings, pin)
  );
}

function alsoMaybe(found) {
  const lines = found.filter((one) => !one.stop).map((one) => say("meter/suspect", { what: one.words, readings: list(one.readings, "comma"), do: one.do }));
  return lines.length ? [make("p", {}, say("meter-guide/may-also-be")), listOf(lines)] : [];
}

/** @param {MeterTable} table */
function others(table, found, recorded) {
  const rest = found.filter((one) => !recorded || one.function !== recorded.function);
  const agreeing = rest.filter((one) => one.standing === "agrees");
  if (agreeing.length) {
    return [make("p", {}, say(recorded ? "meter-guide/others-agree" : "meter-guide/agree-with")), listOf(grouped(table, agreeing))];
  }
  const ruledOut = found[0].standing === "disagrees" && !(recorded && recorded.standing === "agrees");
  return ruledOut ? [make("p", {}, say("meter-guide/none-agrees"))] : [];
}

/** @param {MeterTable} table */
function asking(table, readings, pin) {
  const asked = next(table, readings, pin && pin.function);
  if (!asked) return [make("p", {}, say("meter/trace"))];
  const kind = table.kind[asked.kind];
  const found = asked.outcomes.map((outcome) => say("meter/outcome", { range: ranged(outcome.band, kind.unit), functions: names(table, outcome.functions) }));
  return [make("p", {}, say("meter-guide/next", { kind: kind.words, state: table.state[asked.state].words })), listOf(found)];
}

function rungWords(found) {
  const buttons = list(found.rungs.map((rung) => rung.name), "or");
  if (found.kind === "ambiguous") return say("ladders/ambiguous", { buttons });
  if (found.kind !== "none") return say("ladders/agrees", { buttons });
  const between = [];
  if (found.below) between.push(say("ladders/above", { button: found.below.name, ohms: measured(found.below.high, "ohm") }));
  if (found.above) between.push(say("ladders/below", { button: found.above.name, ohms: measured(found.above.low, "ohm") }));
  return say("ladders/none-of-them", { between: between.length ? list(between) : say("ladders/no-band") });
}

/** @param {MeterTable} table */
function pressed(table, plug, pinId, readings) {
  const dead = readings.filter((reading) => table.kind[reading.kind].dead && table.state[reading.state].ohms);
  return plug.ladders.filter((ladder) => ladder.pin === pinId).map((ladder) => dead.map((reading) => {
    const values = { ladder: ladder.id, reading: reading.text, found: rungWords(place(ladder.rungs, reading.value)) };
    return ladder.when ? say("meter-guide/ladder-of-cars", { ...values, cars: ladder.when }) : say("meter-guide/ladder", values);
  })).flat();
}

/** @param {MeterTable} table */
function start(table, box) {
  /** @type {MeterPlug} */
  const plug = JSON.parse(box.querySelector("script[type='application/json']").textContent);
  const pick = box.querySelector("[data-meter=pin]");
  const state = box.querySelector("[data-meter=state]");
  const kind = box.querySelector("[data-meter=kind]");
  const value = box.querySelector("[data-meter=value]");
  const out = box.querySelector("[data-meter=out]");
  const taken = box.querySelector("[data-meter=taken]");
  const trouble = box.querySelector("[data-meter=trouble]");
  let readings = [];

  function pin() {
    return plug.pins.filter((one) => one.id === pick.value)[0] || null;
  }

  function show() {
    const care = pin() ? table.function[pin().function].care : [];
    const buttons = pressed(table, plug, pick.value, readings);
    out.textContent = "";
    /* What holds for every wire stands above the fields; before the next reading comes what holds for this one. */
    const own = care.length ? [listOf(care.map((id) => table.caution[id].text))] : [];
    own.concat(results(table, readings, pin()), buttons.length ? [listOf(buttons)] : [])
      .forEach((part) => { out.appendChild(part); });
    taken.textContent = list(readings.map((reading) => reading.text), "semicolon");
  }

  /* The number with what the fields say of it; a unit typed with it counts. */
  function whole() {
    const typed = value.value.trim();
    const bare = /^[+\-−]?[0-9.,]+$/.test(typed);
    const how = { pair: "across the pair", ac: "AC" }[kind.value] || "";
    return [typed, bare ? table.kind[kind.value].unit : "", how, table.state[state.value].says[0]].filter(Boolean).join(" ");
  }

  function add() {
    try {
      readings.push(read(table, whole()));
      trouble.textContent = "";
      value.value = "";
    } catch (error) {
      if (!(error instanceof Misread)) throw error;
      trouble.textContent = say("meter/unread", { why: error.message, hint: error.hint });
    }
    show();
  }

  box.querySelector("[data-meter=add]").addEventListener("click", add);
  value.addEventListener("keydown", (event) => { if (event.key === "Enter") { event.preventDefault(); add(); } });
  box.querySelector("[data-meter=clear]").addEventListener("click", () => { readings = []; trouble.textContent = ""; show(); });
  pick.addEventListener("change", () => { readings = []; show(); });
  box.querySelector("[data-meter=form]").hidden = false;
  show();
}

const boxes = document.querySelectorAll(".ut-meter"); // before a visit takes any of them out of the document

/** @param {MeterTable} table */
function startAll(table) { boxes.forEach((box) => { start(table, box); }); }

window.undertrimMeter = { start: startAll };
const holder = document.getElementById("ut-meter-table");
if (holder) startAll(JSON.parse(holder.textContent));
