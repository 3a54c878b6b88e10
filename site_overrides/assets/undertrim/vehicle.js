/* Filters a vehicle's steps by job and car, adds up what is left, and remembers what was ticked. The lists come from the planner. */

import { chosenCar, chosenJobs, page } from "./chosen.js";
import { above, all, byId, fields, target } from "./elements.js";
import "./fit-form.js";
import "./meter-guide.js";
import { list, say } from "./words.js";

/** @import { Page } from "published" */

/** @type {Page} */
const data = JSON.parse(byId("ut-data").textContent);
const stepList = byId("ut-steps");
const shown = byId("ut-shown");
const reset = byId("ut-reset");
const next = byId("ut-new");
const items = {};
all("[data-step]", stepList).forEach((item) => { items[item.dataset.step] = item; });
const stated = {};
Object.keys(items).forEach((number) => {
  const line = items[number].querySelector(".ut-state");
  stated[number] = line && { line, words: line.textContent };
});
const cautions = {};
Object.keys(items).forEach((number) => {
  cautions[number] = all(".ut-caution", items[number]).map((box) => ({ words: box.textContent, danger: box.classList.contains("ut-danger"), full: box.querySelector(".ut-full"), told: box.querySelector(".ut-told") }));
});
const headings = {};
all("[data-section]", stepList).forEach((item) => { headings[item.dataset.section] = headings[item.dataset.section] || item; });
const key = "undertrim:" + data.address;

page.classList.add("ut-live");

/* A plug is drawn no smaller than a finger needs; set here, since the policy of the site allows no style in the page itself. */
all("[data-least]", page).forEach((box) => {
  box.style.minWidth = box.dataset.least;
  box.style.maxWidth = box.dataset.most;
});

function matches(clauses, car) {
  return Object.keys(clauses || {}).every((name) => !(name in car) || clauses[name].indexOf(car[name]) >= 0);
}

function agrees(kind, car) {
  return Object.keys(kind).every((name) => !(name in car) || kind[name] === car[name]);
}

function concerns(item, jobs, car) {
  const openings = item.dataset.openings ? item.dataset.openings.split(" ") : [];
  const mine = !jobs.length || !openings.length || jobs.some((job) => openings.indexOf(job.split("@")[0]) >= 0);
  return mine && matches(JSON.parse(item.dataset.clauses || "{}"), car);
}

/* The steps of a visit to one car: listed by themselves where they differ, else those of its openings in the one order. */
function visit(plan, jobs) {
  const own = plan.sets[jobs.join("+")];
  if (own) return own;
  const wanted = {};
  jobs.forEach((job) => { (plan.singles[job] || []).forEach((step) => { wanted[step] = true; }); });
  return Object.keys(wanted).map(Number).sort((a, b) => a - b);
}

function selection(jobs, car) {
  const plans = data.plans.filter((plan) => agrees(plan.car, car));
  if (plans.length === 1 && jobs.length) return visit(plans[0], jobs);
  const all = jobs.length ? jobs : Object.keys(data.plans[0].singles);
  const wanted = {};
  plans.forEach((plan) => {
    (jobs.length ? visit(plan, all) : all.map((job) => plan.singles[job] || []).flat())
      .forEach((step) => { wanted[step] = true; });
  });
  return Object.keys(wanted).map(Number).sort((a, b) => a - b);
}

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

function text(tag, value) {
  const made = document.createElement(tag);
  made.textContent = value;
  return made;
}

function fill(target, children) {
  target.textContent = "";
  children.forEach((child) => { target.appendChild(child); });
}

function showTotals(steps, car) {
  byId("ut-time").textContent = timeText(steps);
  fill(byId("ut-tools"), tools(steps, car).map((tool) => {
    const item = text("li", tool);
    if (data.instead[tool]) item.append(" ", text("small", say("vehicle-page/or-instead", { tools: list(data.instead[tool], "comma") })));
    return item;
  }));
  const buy = purchases(steps, car);
  fill(byId("ut-buy"), buy.length ? buy.map((item) => {
    const number = item.count === null ? say("vehicle-page/unknown-number") : item.count;
    const line = text("li", say("vehicle-page/buy", { number, what: item.what }) + " ");
    line.appendChild(text("small", "(" + item.part + ")"));
    return line;
  }) : [text("li", say("vehicle-page/nothing-to-buy"))]);
  const sums = tally(steps, car);
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

function showSteps(numbers) {
  let last = "";
  Object.keys(items).forEach((number) => { items[number].hidden = true; });
  all("[data-section]", stepList).forEach((item) => { item.remove(); });
  numbers.forEach((number) => {
    const section = data.steps[number].section;
    if (section !== last) {
      const heading = headings[section].cloneNode(true);
      stepList.appendChild(heading);
      last = section;
    }
    items[number].hidden = false;
    stepList.appendChild(items[number]);
  });
}

/* Battery and ignition beside each step, over the steps of this visit: of several batteries one may be off and another on.
   With the car left open there is no one run of steps, and what holds in all of them stands there already. */
function showStates(numbers, oneCar) {
  const batteries = {};
  Object.keys(stated).forEach((number) => { if (stated[number]) stated[number].line.textContent = stated[number].words; });
  if (!oneCar) return;
  numbers.forEach((number) => {
    data.steps[number].turns.forEach((turn) => { if (turn[0] === "battery") batteries[turn[1]] = "on"; });
  });
  const now = { battery: "on", ignition: "off" };
  numbers.forEach((number) => {
    data.steps[number].turns.forEach((turn) => {
      if (turn[0] !== "battery") { now[turn[0]] = turn[2]; return; }
      batteries[turn[1]] = turn[2];
      const names = Object.keys(batteries);
      const off = names.filter((name) => batteries[name] === "off").length;
      now.battery = !off ? "on" : off === names.length ? "off" : "partly-off";
    });
    if (stated[number]) stated[number].line.textContent = list([say(`states/battery-${now.battery}`), say(`states/ignition-${now.ignition}`)], "comma");
  });
}

/* A caution that the step just before has too is cut short, as in the plan and on the sheet; DANGER never is. */
function showCautions(numbers) {
  let told = {};
  numbers.forEach((number, place) => {
    const here = {};
    cautions[number].forEach((caution) => {
      const first = caution.words in told ? told[caution.words] : place;
      const short = first !== place && !caution.danger;
      here[caution.words] = first;
      caution.full.hidden = short;
      caution.told.hidden = !short;
      caution.told.textContent = short ? say("cautions/in-full-before", { step: first + 1 }) : "";
    });
    told = here;
  });
}

function words(boxes, otherwise) {
  return list(Array.from(boxes).map((box) => (box.closest("label").querySelector("b") || box.closest("label").lastElementChild).textContent), "semicolon") || otherwise;
}

/* What the visit is, at the top of the printed page, where nothing can be chosen. */
function showVisit() {
  byId("ut-visit-job").textContent = words(fields("input[name=job]:checked", page), say("vehicle-page/all-jobs"));
  byId("ut-visit-car").textContent = words(fields(".ut-variant input:checked", page), say("vehicle-page/every-car"));
}

function update() {
  const jobs = chosenJobs();
  const car = chosenCar();
  const numbers = selection(jobs, car);
  showSteps(numbers);
  showCautions(numbers);
  showStates(numbers, jobs.length && data.plans.filter((plan) => agrees(plan.car, car)).length === 1);
  showTotals(numbers.map((number) => data.steps[number]), car);
  all("[data-cars]", page).forEach((item) => {
    item.hidden = !JSON.parse(item.dataset.cars).some((kind) => agrees(kind, car));
  });
  all("[data-clauses], [data-openings]", page).forEach((item) => { item.hidden = !concerns(item, jobs, car); });
  const open = all(".ut-variant", page).filter((set) => !(set.dataset.variant in car));
  const which = jobs.length ? open.length ? "vehicle-page/steps-of-all-cars" : "vehicle-page/steps-shown" : open.length ? "vehicle-page/steps-of-all" : "vehicle-page/steps-of-all-jobs";
  shown.textContent = say(which, { count: numbers.length });
  showVisit();
  reset.hidden = !jobs.length && !Object.keys(car).length;
  store();
}

function store() {
  const ticks = fields("[data-tick]:checked", page).map((box) => box.dataset.tick);
  next.hidden = !ticks.length;
  try {
    localStorage.setItem(key, JSON.stringify({ jobs: chosenJobs(), car: chosenCar(), ticks }));
  } catch (error) { /* a browser that keeps nothing still shows everything */ }
}

function restore() {
  let kept = {};
  try { kept = JSON.parse(localStorage.getItem(key)) || {}; } catch (error) { kept = {}; }
  const asked = new URLSearchParams(location.search);
  const jobs = asked.has("job") ? asked.get("job").split(" ").join("+").split("+") : kept.jobs || [];
  fields("input[name=job]", page).forEach((box) => { box.checked = jobs.indexOf(box.value) >= 0; });
  fields(".ut-variant input", page).forEach((box) => {
    const name = above(box, ".ut-variant").dataset.variant;
    box.checked = (asked.get(name) || (kept.car || {})[name]) === box.value;
  });
  fields("[data-tick]", page).forEach((box) => { box.checked = (kept.ticks || []).indexOf(box.dataset.tick) >= 0; });
}

page.addEventListener("change", (event) => {
  if (target(event).matches("[data-tick]")) store();
  else update();
});
reset.addEventListener("click", () => {
  fields(".ut-choose input", page).forEach((box) => { box.checked = false; });
  update();
});
next.addEventListener("click", () => {
  fields("[data-tick]", page).forEach((box) => { box.checked = false; });
  store();
});
restore();
update();
