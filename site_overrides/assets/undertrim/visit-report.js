/* The report of a job: which car, by whom, what was done when, what the tests showed, what the owner agreed to lose, and what was used.
   It is made on the device, and goes where a person takes it: onto paper, or into a file. */

import { all, byId, make } from "./elements.js";
import { keep, kept } from "./visit-kept.js";
import { fileName, save } from "./visit-passed.js";
import { chosen, chosenCar, known } from "./chosen.js";
import { tryIt } from "./tried.js";
import { forTheBroken } from "./visit-added.js";
import { data, isTest, titleOf } from "./visit-steps.js";
import { say, tag } from "./words.js";

const WHO = "undertrim:who";

function lastWho() { try { return localStorage.getItem(WHO) || ""; } catch (error) { return ""; } }
function rememberWho(who) { try { localStorage.setItem(WHO, who); } catch (error) { /* typed again next time */ } }

function at(time) { return new Date(time).toLocaleString(tag(), { dateStyle: "short", timeStyle: "short" }); }
function clock(time) { return new Date(time).toLocaleTimeString(tag(), { timeStyle: "short" }); }

/* What the owner loses, by what an agreement to it is kept under, which is the same in every language. */
function losses() { return all(".ut-blocker.ut-lost").map((item) => ({ key: `agreed:${item.dataset.blocker}`, loss: item.querySelector("b").textContent })); }

/* What one types into a report, each under its name. */
function field(name, label, otherwise = "", also = null) {
  const box = /** @type {HTMLInputElement} */ (make("input", { type: "text", value: kept().report[name] || otherwise, change: () => {
    keep((one) => {
      delete one.report[name];
      if (box.value.trim()) one.report[name] = box.value.trim();
    });
    if (also) also(box.value.trim());
    box.dispatchEvent(new CustomEvent("ut-typed", { bubbles: true }));
  } }));
  return make("label", {}, label, box);
}

function section(title, ...inside) { return inside.length ? [make("h3", {}, title), ...inside] : []; }
function items(texts) { return texts.length ? [make("ul", {}, ...texts.map((text) => make("li", {}, text)))] : []; }

/* What was bought besides: of the visit, and for what broke. */
function used(numbers) {
  const gear = all(".ut-gear-place .ut-gear-toggle b").filter((item) => above(item)).map((item) => item.textContent);
  const bought = all("#ut-buy li small").map((item) => item.parentElement.textContent);
  return [...gear, ...bought, ...forTheBroken(data, numbers)];
}

function above(item) { return item.closest(".ut-gear-place").querySelector(".ut-gear-said") !== null; }

/**
 * The report as it is printed and saved: text alone.
 * @param {string[]} numbers the steps of the visit
 */
function whole(numbers) {
  const visit = kept(), typed = visit.report, isDone = (number) => data.steps[number].id in visit.done;
  const times = Object.values(visit.done), note = (number) => visit.notes[data.steps[number].id] || "";
  const about = [["bay/vehicle", visit.title], ["bay/this-visit", visit.name], ["bay/which-car", typed.car], ["joint/fill-by", typed.who],
    ["sheet/job", byId("ut-visit-job").textContent], ["bay/kind-of-car", byId("ut-visit-car").textContent],
    ["bay/from-to", times.length ? say("bay/span-of-time", { from: at(Math.min(...times)), to: at(Math.max(...times)) }) : ""]];
  const tests = numbers.filter(isTest);
  const agreed = losses().map(({ key, loss }) => typed[key] ? say("bay/agreed", { loss, who: typed[key] }) : say("bay/not-agreed", { loss }));
  return make("div", { class: "ut-report-page" }, make("h2", {}, say("bay/report")),
    make("dl", {}, ...about.filter(([, value]) => value).flatMap(([name, value]) => [make("dt", {}, say(name)), make("dd", {}, value)])),
    ...section(say("bay/lost"), ...items(agreed)),
    ...section(say("bay/tests"), ...items(tests.map((number) => say(isDone(number) ? "bay/test-done" : "bay/test-open", { test: titleOf(number), showed: note(number) || say("bay/nothing-noted") })))),
    ...section(say("bay/used"), ...items(used(numbers))),
    ...section(say("bay/not-done"), ...items(numbers.filter((number) => !isDone(number)).map(titleOf))),
    ...section(say("bay/done-steps"), make("ol", {}, ...numbers.filter(isDone).map((number) =>
      make("li", {}, titleOf(number), " ", make("small", {}, clock(visit.done[data.steps[number].id])), ...note(number) ? [make("p", {}, note(number))] : [])))));
}

const STYLE = "body{font:12pt/1.4 sans-serif;max-width:45rem;margin:2rem auto;padding:0 1rem}dl{display:grid;grid-template-columns:max-content 1fr;gap:.2em 1em}dd{margin:0;font-weight:bold}li{break-inside:avoid}";

/* A document of its own, in the language of this page. */
function file(page) {
  const made = document.implementation.createHTMLDocument(say("bay/report"));
  made.documentElement.lang = document.documentElement.lang;
  made.head.append(make("meta", { charset: "utf-8" }));
  made.body.append(page.cloneNode(true));
  // The style is text until the file is opened: this page's policy has no leave for it.
  return "<!doctype html>\n" + new XMLSerializer().serializeToString(made.documentElement).replace("</head>", `<style>${STYLE}</style></head>`) + "\n";
}

/* For each piece of gear of the visit, the way to say whether it went in. */
function whetherIn() {
  const places = all(".ut-gear-place").filter((item) => above(item.querySelector(".ut-gear-toggle b")) && (chosen().gear[item.dataset.opening] || {}).gear);
  const rows = places.map((item) => {
    const opening = item.dataset.opening, [place, name] = Array.from(item.querySelector(".ut-gear-toggle").children).map((part) => part.textContent);
    return make("p", {}, place, ": ", make("b", {}, name), " ", tryIt({ id: chosen().gear[opening].gear, name, kind: known.words.takes[opening] }, { vehicle: known.address, opening: known.words.written[opening], place, car: chosenCar() }));
  });
  return rows.length ? [make("fieldset", { class: "ut-report-tried" }, make("legend", {}, say("tried-form/in-report")), ...rows)] : [];
}

/** @param {string[]} numbers */
export function openReport(numbers) {
  const spot = make("div", {});
  const again = () => { spot.replaceChildren(whole(numbers)); };
  const dialog = /** @type {HTMLDialogElement} */ (make("dialog", { class: "ut ut-report", "aria-label": say("bay/report"), "ut-typed": again, close: () => { dialog.remove(); } },
    make("div", { class: "ut-report-typed" },
      field("who", say("joint/fill-by"), lastWho(), rememberWho), field("car", say("bay/which-car-hint")),
      ...losses().map(({ key, loss }) => field(key, say("bay/agreed-by", { loss }))), ...whetherIn(),
      make("p", { class: "ut-report-do" },
        make("button", { type: "button", class: "ut-button", click: () => { window.print(); } }, say("bay/print")),
        make("button", { type: "button", class: "ut-button", click: () => { save(fileName(kept(), "-report.html"), "text/html", file(spot)); } }, say("bay/save-report")),
        make("button", { type: "button", class: "ut-button", click: () => { dialog.close(); } }, say("bay/close")))),
    spot));
  if (!kept().report.who && lastWho()) keep((one) => { one.report.who = lastWho(); });
  again();
  document.querySelector(".ut-vehicle").append(dialog);
  dialog.showModal();
}
