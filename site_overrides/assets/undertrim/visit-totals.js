/* What the steps of a visit come to: time, tools, what to buy, and the tally of fasteners. */

import { matches } from "./concerns.js";
import { minutes } from "./times.js";
import { list, say } from "./words.js";

/* Minutes of work, work without a recorded time, and waits in s, null where that is not recorded. */
function spent(steps) {
  let total = 0;
  let untimed = 0;
  const waits = [];
  steps.forEach((step) => {
    if (step.minutes !== null && step.section !== "none") total += step.minutes;
    untimed += step.untimed;
    if (step.wait) waits.push(step.wait.seconds);
  });
  return { minutes: total, untimed, waits };
}

/* The time in words; `most` are the minutes where it takes longest. */
export function timeText({ minutes: least, untimed, waits }, most) {
  const time = minutes(least), longest = minutes(most);
  const parts = [say("times/work", { time: time === longest ? time : say("times/span", { least: time, most: longest }) })];
  if (untimed) parts.push(say("times/untimed", { count: untimed }));
  const counted = new Map();
  waits.forEach((wait) => { counted.set(wait, (counted.get(wait) || 0) + 1); });
  counted.forEach((count, wait) => {
    parts.push(wait === null ? say("times/wait-unknown", { count }) : say("times/wait", { count, time: minutes(wait / 60) }));
  });
  return say("times/whole", { parts: list(parts, "comma-plus") });
}

/* How long these steps take, as far as anybody has timed them, in a word or two. */
export function minutesLeft(steps) {
  const { minutes: least, untimed } = spent(steps);
  if (!least && !untimed) return "";
  return say(untimed || steps.some((step) => step.wait && step.wait.seconds === null) ? "bay/at-least-left" : "bay/time-left", { time: minutes(Math.ceil(least)) });
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

export const FATES = ["out", "back", "moved", "bagged", "binned", "new"];

function tally(steps, car) {
  const sums = {};
  steps.forEach((step) => {
    lines(step, car).forEach((line) => {
      line.counts.forEach((count) => {
        const sum = sums[count.sort] || (sums[count.sort] = { out: 0, back: 0, moved: 0, bagged: 0, binned: 0, new: 0, unrecorded: 0 });
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

/* All of it as facts, for one car: the time in words and what it is made of, names of tools, what to buy, and the tally by sort of fastener. */
export function totals(steps, car) {
  const time = spent(steps);
  return { time: timeText(time, time.minutes), spent: time, tools: tools(steps, car), buy: purchases(steps, car), tally: tally(steps, car) };
}
