/* Shows the steps of a visit to a vehicle and what they come to, and remembers what was ticked. The lists come from the planner. */

import { chosenCar, chosenJobs, page } from "./chosen.js";
import { above, all, byId, fields, target } from "./elements.js";
import "./fit-form.js";
import "./meter-guide.js";
import { showTotals } from "./vehicle-totals.js";
import { agrees, concerns, selection } from "./vehicle-visit.js";
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
  const numbers = selection(data.plans, jobs, car);
  showSteps(numbers);
  showCautions(numbers);
  showStates(numbers, jobs.length && data.plans.filter((plan) => agrees(plan.car, car)).length === 1);
  showTotals(numbers.map((number) => data.steps[number]), car, data.instead);
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
  const jobs = asked.has("jobs") ? asked.get("jobs").split(",") : kept.jobs || [];
  fields("input[name=job]", page).forEach((box) => {
    box.checked = [box.value, box.value.split("@")[0]].some((job) => jobs.indexOf(job) >= 0); // each side, or every side at once
  });
  fields(".ut-variant input", page).forEach((box) => {
    const name = above(box, ".ut-variant").dataset.variant;
    box.checked = (asked.get(`${name}.choice`) || asked.get(name) || (kept.car || {})[name]) === box.value;
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
