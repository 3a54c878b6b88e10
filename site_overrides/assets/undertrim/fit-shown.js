/* An answer as it is shown in full: the verdict, every check with its numbers, and what to know. */

import { make } from "./elements.js";
import { SIGNS } from "./fit-signs.js";
import { verdictWords } from "./fit-verdict.js";
import { both } from "./lengths.js";
import { list, say } from "./words.js";

export function verdictLine(found) {
  return make("p", { "class": "ut-try-verdict ut-is-" + found.kind }, make("b", {}, SIGNS[found.kind] + " " + verdictWords(found)), found.reason ? " " + found.reason : "");
}

export function checks(found) {
  return make("table", { "class": "ut-table ut-checks" },
    make("thead", {}, make("tr", {}, make("th", { scope: "col" }, say("fit-form/check")), make("th", { scope: "col" }, say("fit-form/numbers")))),
    make("tbody", {}, ...found.checks.map(row))
  );
}

function row(check) {
  const numbers = check.numbers.filter((one) => one.value !== 0 || one.step).map(number);
  return make("tr", {}, make("th", { scope: "row" }, SIGNS[check.verdict] + " " + check.words), make("td", { "data-label": say("fit-form/numbers") }, list(numbers, "semicolon")));
}

function number(one) {
  const text = one.step ? say("fit-shown/give-or-take", { number: one.text, step: both(one.step) }) : one.text;
  return say("fit-shown/number", { label: one.label, number: one.default ? say("fit-shown/usual", { number: text }) : text });
}

export function notes(said) { return said.length ? make("ul", { "class": "ut-notes" }, ...said.map((note) => make("li", {}, note))) : ""; }
