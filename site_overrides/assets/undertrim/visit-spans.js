/* What jobs come to where the car is left open: from the least to the most of its kinds, since no car has what excludes each other. As `publish/facts/spans.py` says it. */

import { agrees } from "./concerns.js";
import { selection } from "./visit-selection.js";
import { FATES, timeText, totals } from "./visit-totals.js";
import { say } from "./words.js";

/* The totals of each kind of car there can be, as far as there is something to do at it. */
export function kinds(data, jobs, car) {
  const each = data.plans.filter((plan) => agrees(plan.car, car)).map((plan) => {
    const numbers = selection([plan], jobs, plan.car);
    return { any: numbers.length > 0, totals: totals(numbers.map((number) => data.steps[number]), plan.car) };
  });
  return (each.some((one) => one.any) ? each.filter((one) => one.any) : each).map((one) => one.totals);
}

export function span(numbers) {
  const least = Math.min(...numbers), most = Math.max(...numbers);
  return least === most ? least : say("times/span", { least, most });
}

/* By what two times are told apart, the first that differs. */
function long({ minutes, untimed, waits }) {
  return [Math.round(minutes * 100) / 100, untimed, waits.length, waits.reduce((sum, wait) => sum + (wait || 0), 0)];
}

function longer(one, other) {
  const [these, those] = [long(one), long(other)];
  const at = these.findIndex((value, place) => value !== those[place]);
  return at < 0 ? 0 : these[at] - those[at];
}

function time(each) {
  if (each.every((one) => one.time === each[0].time)) return each[0].time;
  const sorted = each.map((one) => one.spent).sort(longer);
  const least = sorted[0], most = sorted[sorted.length - 1];
  const rest = ({ untimed, waits }) => JSON.stringify([untimed, waits]);
  if (sorted.every((one) => rest(one) === rest(least))) return timeText(least, most.minutes);
  return say("times/between", { least: timeText(least, least.minutes), most: timeText(most, most.minutes) });
}

function distinct(values) { return values.filter((value, at) => values.indexOf(value) === at); }

function tools(each) {
  return distinct(each.flatMap((one) => one.tools)).map((name) => ({ name, some: !each.every((one) => one.tools.includes(name)) }));
}

function tally(each) {
  const sorts = distinct(each.flatMap((one) => Object.keys(one.tally)));
  return sorts.map((sort) => {
    const [unrecorded, ...counts] = ["unrecorded", ...FATES].map((fate) => span(each.map((one) => one.tally[sort] ? one.tally[sort][fate] : 0)));
    return { sort, counts, unrecorded };
  });
}

/* How many a part wants of a thing; null where that is not recorded. */
function count(items) { return items.some((item) => item.count === null) ? null : items.reduce((sum, item) => sum + item.count, 0); }

function number(each, what, part) {
  const counts = each.map((one) => count(one.buy.filter((item) => item.what === what && item.part === part)));
  const known = span(counts.map((one) => one || 0));
  if (!counts.includes(null)) return known;
  return known ? say("sheet/and-more", { number: known }) : say("vehicle-page/unknown-number");
}

function buy(each) {
  const places = {};
  each.flatMap((one) => one.buy).forEach(({ what, part }) => { places[JSON.stringify([what, part])] = [what, part]; });
  return Object.keys(places).map((place) => places[place]).map(([what, part]) => ({ what, part, number: number(each, what, part) }));
}

/* All of it as it is shown; `each` are the totals of the kinds of car. */
export function spanned(each) {
  return { time: time(each), tools: tools(each), rows: tally(each), buy: buy(each) };
}
