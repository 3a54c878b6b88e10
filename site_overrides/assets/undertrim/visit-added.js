/* Shows what the steps of a visit come to. */

import { byId } from "./elements.js";
import { kept } from "./visit-kept.js";
import { kinds, spanned } from "./visit-spans.js";
import { titleOf } from "./visit-steps.js";
import { spoilt } from "./visit-tray.js";
import { list, say } from "./words.js";

function text(tag, value) {
  const made = document.createElement(tag);
  made.textContent = value;
  return made;
}

function fill(target, children) {
  target.textContent = "";
  children.forEach((child) => { target.appendChild(child); });
}

/**
 * What broke or was lost in the steps of a visit, each with the step where it did.
 * @param {string[]} numbers the steps by number
 */
export function forTheBroken(data, numbers) {
  const titles = Object.fromEntries(numbers.map((number) => [data.steps[number].id, titleOf(number)]));
  return spoilt(kept(), data.steps).map(({ step, sort, count }) => say("bay/for-the-broken", { count, sort, step: titles[step] || step }));
}

export function showTotals(data, jobs, car, numbers) {
  const { time, tools, buy, rows } = spanned(kinds(data, jobs, car));
  byId("ut-time").textContent = time;
  fill(byId("ut-tools"), tools.map(({ name, some }) => {
    const item = text("li", name);
    if (data.instead[name]) item.append(" ", text("small", say("vehicle-page/or-instead", { tools: list(data.instead[name], "comma") })));
    if (some) item.append(" ", text("small", say("vehicle-page/in-some-cars")));
    return item;
  }));
  const bought = buy.map(({ what, part, number }) => {
    const line = text("li", say("vehicle-page/buy", { number, what }) + " ");
    line.appendChild(text("small", "(" + part + ")"));
    return line;
  }).concat(forTheBroken(data, numbers).map((broken) => text("li", broken)));
  fill(byId("ut-buy"), bought.length ? bought : [text("li", say("vehicle-page/nothing-to-buy"))]);
  fill(document.querySelector("#ut-tally tbody"), rows.map(({ sort, counts, unrecorded }) => {
    const row = document.createElement("tr");
    const head = text("th", sort);
    head.scope = "row";
    if (unrecorded) head.append(" ", text("small", say("vehicle-page/and-unknown-number")));
    row.appendChild(head);
    counts.forEach((count) => { row.appendChild(text("td", count)); });
    return row;
  }));
}
