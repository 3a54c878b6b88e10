/* Shows what the steps of a visit come to. */

import { byId } from "./elements.js";
import { kinds, spanned } from "./visit-spans.js";
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

export function showTotals(data, jobs, car) {
  const { time, tools, buy, rows } = spanned(kinds(data, jobs, car));
  byId("ut-time").textContent = time;
  fill(byId("ut-tools"), tools.map(({ name, some }) => {
    const item = text("li", name);
    if (data.instead[name]) item.append(" ", text("small", say("vehicle-page/or-instead", { tools: list(data.instead[name], "comma") })));
    if (some) item.append(" ", text("small", say("vehicle-page/in-some-cars")));
    return item;
  }));
  fill(byId("ut-buy"), buy.length ? buy.map(({ what, part, number }) => {
    const line = text("li", say("vehicle-page/buy", { number, what }) + " ");
    line.appendChild(text("small", "(" + part + ")"));
    return line;
  }) : [text("li", say("vehicle-page/nothing-to-buy"))]);
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
