/* The meter guide of a plug: pick pin and state, type a reading, see what it agrees with and what to measure next.
   Each guide is a `.ut-meter` with its plug as JSON; js has the logic. Either the page holds the table in
   `#ut-meter-table`, or a script after this one calls undertrimMeter.start() with it. */

import { consider, next, weigh } from "./meter-functions.js";
import { Misread, read } from "./meter-readings.js";
import { place, suspicions } from "./meter-suspects.js";
import { measured, names, ranged } from "./meter-words.js";

/** @import { MeterPlug, MeterTable } from "published" */

const WHY = {
  "": "says nothing about this function",
  power: "says nothing: ohms count with the power off alone",
  live: "says nothing: the wire had voltage with the key off, and ohms count on a dead wire alone"
};
const SAID = { agrees: "Agrees: ", disagrees: "Disagrees: ", nothing: "No answer: " };
const RECORD = {
  agrees: "The readings agree with the record: ",
  open: "The readings say nothing about the record: ",
  disagrees: "The readings disagree with the record: "
};

function make(tag, text, className) {
  const made = document.createElement(tag);
  if (text) made.textContent = text;
  if (className) made.className = className;
  return made;
}

function listOf(lines) {
  const list = make("ul");
  lines.forEach((line) => { list.appendChild(make("li", line)); });
  return list;
}

/** @param {MeterTable} table */
function reason(table, reading, finding) {
  const kind = table.kind[reading.kind];
  if (!finding.band) return SAID[finding.verdict] + reading.text + " " + WHY[finding.why] + ".";
  return SAID[finding.verdict] + reading.text + ". Expected, " + kind.words + ", " + table.state[reading.state].words + ": " +
    finding.band.words + ", " + ranged(finding.band, kind.unit) + " (" + table.sure[finding.sure] + ").";
}

/** @param {MeterTable} table */
function grouped(table, found) {
  const alike = {};
  found.forEach((one) => { (alike[one.pattern] = alike[one.pattern] || []).push(one.function); });
  return Object.keys(alike).map((pattern) => names(table, alike[pattern]) + ": " + table.pattern[pattern].words);
}

/** @param {MeterTable} table */
function results(table, readings, pin) {
  const recorded = pin ? consider(table, pin.function, readings, pin.behaves, pin.supply) : null;
  const found = suspicions(table, readings, recorded);
  const stops = found.filter((one) => one.stop);
  const parts = stops.map((one) => make("p", "STOP: " + one.readings.join(", ") + " may be " + one.words + ". " + one.do, "ut-stop"));
  if (recorded && readings.length) {
    parts.push(make("p", RECORD[recorded.standing] + pin.words + ".", "ut-standing"));
    parts.push(listOf(readings.map((reading, index) => reason(table, reading, recorded.findings[index]))));
  } else if (recorded) {
    parts.push(make("p", "By the record: " + pin.words + "."));
  }
  const named = [alsoMaybe(found), readings.length ? others(table, weigh(table, readings), recorded) : []];
  if (stops.length) named.reverse(); // a speaker comes second behind an igniter
  return parts.concat(
    named[0], named[1],
    stops.length ? [make("p", "Measure nothing more on this wire: look it up in the maker's information.")] : asking(table, readings, pin)
  );
}

function alsoMaybe(found) {
  const lines = found.filter((one) => !one.stop).map((one) => one.words + " (" + one.readings.join(", ") + "): " + one.do);
  return lines.length ? [make("p", "It may also be:"), listOf(lines)] : [];
}

/** @param {MeterTable} table */
function others(table, found, recorded) {
  const rest = found.filter((one) => !recorded || one.function !== recorded.function);
  const agreeing = rest.filter((one) => one.standing === "agrees");
  if (agreeing.length) {
    return [make("p", recorded ? "Other functions that the readings agree with:" : "The readings agree with:"), listOf(grouped(table, agreeing))];
  }
  const ruledOut = found[0].standing === "disagrees" && !(recorded && recorded.standing === "agrees");
  return ruledOut ? [make("p", "No function agrees with every reading: take them again.")] : [];
}

/** @param {MeterTable} table */
function asking(table, readings, pin) {
  const asked = next(table, readings, pin && pin.function);
  if (!asked) return [make("p", "No further reading in the table tells for certain what remains: trace the wire.")];
  const kind = table.kind[asked.kind];
  const found = asked.outcomes.map((outcome) => ranged(outcome.band, kind.unit) + ": " + names(table, outcome.functions));
  return [make("p", "Measure next: " + kind.words + ", " + table.state[asked.state].words + "."), listOf(found)];
}

function rungWords(found) {
  const called = found.rungs.map((rung) => rung.name).join(" or ");
  if (found.kind === "ambiguous") return "ambiguous: " + called + ", their bands overlap here";
  if (found.kind !== "none") return "agrees with " + called;
  const between = [];
  if (found.below) between.push("above " + found.below.name + " (to " + measured(found.below.high, "ohm") + ")");
  if (found.above) between.push("below " + found.above.name + " (from " + measured(found.above.low, "ohm") + ")");
  return "none of them: " + (between.join(" and ") || "no band is recorded");
}

/** @param {MeterTable} table */
function pressed(table, plug, pinId, readings) {
  const dead = readings.filter((reading) => table.kind[reading.kind].dead && table.state[reading.state].ohms);
  return plug.ladders.filter((ladder) => ladder.pin === pinId).map((ladder) => dead.map((reading) => {
    const cars = ladder.when ? " (" + ladder.when + ")" : "";
    return "Ladder " + ladder.id + cars + ", " + reading.text + ": " + rungWords(place(ladder.rungs, reading.value)) + ".";
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
    taken.textContent = readings.map((reading) => reading.text).join("; ");
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
      trouble.textContent = error.message + ": " + error.hint;
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

/** @param {MeterTable} table */
function startAll(table) {
  document.querySelectorAll(".ut-meter").forEach((box) => { start(table, box); });
}

window.undertrimMeter = { start: startAll };
const holder = document.getElementById("ut-meter-table");
if (holder) startAll(JSON.parse(holder.textContent));
