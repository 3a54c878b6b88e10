/* What the steps of a visit come to: time, tools, what to buy, and the tally of fasteners. */

import { byId } from "./elements.js";
import { matches } from "./concerns.js";
import { list, say } from "./words.js";

function minutes(value) {
  const seconds = Math.floor(value * 60 + 0.5);
  const parts = { hours: Math.floor(seconds / 3600), minutes: Math.floor(seconds / 60) % 60, seconds: seconds % 60 };
  const said = Object.keys(parts).filter((unit) => parts[unit]).map((unit) => say(`times/${unit}`, { number: parts[unit] }));
  return list(said, "spaced") || say("times/seconds", { number: 0 });
}

function timeText(steps) {
  let total = 0;
  let untimed = 0;
  const waits = [];
  steps.forEach((step) => {
    if (step.minutes !== null && step.section !== "none") total += step.minutes;
    untimed += step.untimed;
    if (step.wait) waits.push(step.wait.seconds);
  });
  const parts = [say("times/work", { time: minutes(total) })];
  if (untimed) parts.push(say("times/untimed", { count: untimed }));
  const counted = new Map();
  waits.forEach((wait) => { counted.set(wait, (counted.get(wait) || 0) + 1); });
  counted.forEach((count, wait) => {
    parts.push(wait === null ? say("times/wait-unknown", { count }) : say("times/wait", { count, time: minutes(wait / 60) }));
  });
  return say("times/whole", { parts: list(parts, "comma-plus") });
}

function lines(step, car) {
  return step.lines.filter((line) => matches(line.clauses, car));
}

function tools(steps, car) {
  const found = {};
  steps.forEach((step) => {
    lines(step, car).forEach((line) => { if (line.tool && line.fate !== "leave") found[line.tool] = line.either; });
    step.tools.forEach((tool) => { found[tool] = []; });
  });
  // Where either of two tools will do, they are left out if one of them is needed anyway.
  return Object.keys(found).filter((tool) => !found[tool].some((one) => found[one]));
}

const FATES = ["out", "back", "moved", "bagged", "new"];

function tally(steps, car) {
  const sums = {};
  steps.forEach((step) => {
    lines(step, car).forEach((line) => {
      line.counts.forEach((count) => {
        const sum = sums[count.sort] || (sums[count.sort] = { out: 0, back: 0, moved: 0, bagged: 0, new: 0, unrecorded: 0 });
        FATES.concat("unrecorded").forEach((fate) => { sum[fate] += count[fate]; });
      });
    });
  });
  return sums;
}

function purchases(steps, car) {
  let found = [];
  steps.forEach((step) => {
    lines(step, car).forEach((line) => { found = found.concat(line.buy); });
    found = found.concat(step.materials);
  });
  return found;
}

/* All of it as facts: the time in words, names of tools, what to buy, and the tally by sort of fastener. */
export function totals(steps, car) {
  return { time: timeText(steps), tools: tools(steps, car), buy: purchases(steps, car), tally: tally(steps, car) };
}

function text(tag, value) {
  const made = document.createElement(tag);
  made.textContent = value;
  return made;
}

function fill(target, children) {
  target.textContent = "";
  children.forEach((child) => { target.appendChild(child); });
}

export function showTotals(steps, car, instead) {
  const { time, tools: needed, buy, tally: sums } = totals(steps, car);
  byId("ut-time").textContent = time;
  fill(byId("ut-tools"), needed.map((tool) => {
    const item = text("li", tool);
    if (instead[tool]) item.append(" ", text("small", say("vehicle-page/or-instead", { tools: list(instead[tool], "comma") })));
    return item;
  }));
  fill(byId("ut-buy"), buy.length ? buy.map((item) => {
    const number = item.count === null ? say("vehicle-page/unknown-number") : item.count;
    const line = text("li", say("vehicle-page/buy", { number, what: item.what }) + " ");
    line.appendChild(text("small", "(" + item.part + ")"));
    return line;
  }) : [text("li", say("vehicle-page/nothing-to-buy"))]);
  fill(document.querySelector("#ut-tally tbody"), Object.keys(sums).map((sort) => {
    const row = document.createElement("tr");
    const head = text("th", sort);
    head.scope = "row";
    if (sums[sort].unrecorded) head.append(" ", text("small", say("vehicle-page/and-unknown-number")));
    row.appendChild(head);
    FATES.forEach((fate) => { row.appendChild(text("td", sums[sort][fate])); });
    return row;
  }));
}
