/* The page of a visit: choose what is worked at and which car it is, then its steps with what they come to, and what was ticked. */

import { choose, chosen, chosenCar, chosenJobs, everythingShown, known, page } from "./chosen.js";
import { agrees, matches } from "./concerns.js";
import { above, all, byId, fields, target } from "./elements.js";
import { showGear } from "./gear-choice.js";
import "./not-so.js";
import { place } from "./placed.js";
import { showPicked } from "./visit-car.js";
import { showDesk } from "./visit-desk.js";
import { arrived, brings } from "./visit-passed.js";
import { address, asked, heed, keep, kept, resume, startAnother } from "./visit-kept.js";
import { showTotals } from "./visit-added.js";
import { showOrder } from "./visit-order.js";
import { nextPlace, openScreen } from "./visit-screen.js";
import { begin } from "./visit-shown.js";
import { selection } from "./visit-selection.js";
import { data, holdsStep, showCautions, showMarks, showStates, showSteps, stepItem, ticks } from "./visit-steps.js";
import { every } from "./visits.js";
import { stay } from "./keeper-asked.js";
import { stockFor } from "./visit-stock.js";
import { say } from "./words.js";

/** @import { Visit } from "./visit-text.js" */

const shown = byId("ut-shown"), reset = byId("ut-reset"), next = byId("ut-new"), everything = byId("ut-everything");
const work = ["before", "go", "steps"].map(byId);
const start = byId("ut-start"), ahead = byId("ut-ahead");
/** @type {string[]} the steps of the visit by number */
let steps = [];
let underWay = null;
const boxes = fields("input[name=job]", page), pairs = fields("[data-both]", page), answers = fields(".ut-variant input", page);

function variantOf(box) { return above(box, ".ut-variant").dataset.variant; }

/* The boxes of an opening's two sides. */
function sidesOf(pair) { return boxes.filter((box) => known.targets.find((one) => one.id === box.value).opening === pair.dataset.both); }

function showPair(pair) {
  const sides = sidesOf(pair), checked = sides.filter((box) => box.checked).length;
  pair.checked = checked === sides.length;
  pair.indeterminate = checked > 0 && !pair.checked;
  above(pair, ".ut-pick").hidden = above(sides[0], ".ut-pick").hidden;
}

/* The form of an opening that such a car has, where the one that was chosen is another car's. */
function ofTheCar(job, car) {
  const own = known.targets.find((one) => one.id === job);
  const forms = known.targets.filter((one) => one.side === own.side && known.words.written[one.opening] === known.words.written[own.opening]);
  return matches(own.clauses, car) ? [job] : forms.filter((one) => matches(one.clauses, car)).map((one) => one.id);
}

/** @returns {Visit} */
function fromBoxes() {
  const car = { ...chosen().car };
  answers.forEach((box) => { if (box.checked) car[variantOf(box)] = box.value; });
  const jobs = boxes.filter((box) => box.checked).flatMap((box) => ofTheCar(box.value, car));
  return { ...chosen(), jobs: boxes.map((box) => box.value).filter((job) => jobs.includes(job)), car };
}

function showBoxes() {
  const { jobs, car } = chosen();
  boxes.forEach((box) => {
    box.checked = jobs.includes(box.value);
    above(box, ".ut-pick").hidden = !matches(known.targets.find((one) => one.id === box.value).clauses, car);
  });
  pairs.forEach(showPair);
  showPicked();
  answers.forEach((box) => { box.checked = car[variantOf(box)] === box.value; });
  reset.hidden = !jobs.length && !Object.keys(car).length;
}

/* What blocks the job stands above the steps, and is named where they are started. */
function showAhead() {
  const titles = all(".ut-blocker", work[0]).map((item) => item.querySelector("b").textContent);
  ahead.hidden = !titles.length;
  ahead.querySelector("b").textContent = say("vehicle-page/read-first", { count: titles.length });
  ahead.querySelector("span").textContent = titles.join(" · ");
}

function showWork(numbers, jobs, car) {
  showSteps(numbers);
  showCautions(numbers);
  showMarks(numbers, jobs);
  showStates(numbers, jobs.length && data.plans.filter((plan) => agrees(plan.car, car)).length === 1);
  showTotals(data, jobs, car, numbers);
  showAhead();
  showStart();
  showOrder(numbers);
}

/* Where the work begins, or goes on. */
function showStart() {
  const step = nextPlace(steps) + 1;
  start.textContent = say(step > 1 ? "vehicle-page/go-on" : "vehicle-page/start", { step, count: steps.length });
}

function shownWords(jobs, car, count) {
  if (!jobs.length && !everythingShown()) return say("vehicle-page/choose-first");
  const open = Object.keys(known.variants).some((name) => !(name in car));
  return say(jobs.length ? open ? "vehicle-page/steps-of-all-cars" : "vehicle-page/steps-shown" : open ? "vehicle-page/steps-of-all" : "vehicle-page/steps-of-all-jobs", { count });
}

function update() {
  const jobs = chosenJobs(), car = chosenCar(), any = jobs.length > 0 || everythingShown();
  const numbers = steps = any ? selection(data.plans, jobs, car) : [];
  work.forEach((part) => { place(part, any); });
  if (any) showWork(numbers, jobs, car);
  everything.hidden = false;
  shown.textContent = shownWords(jobs, car, numbers.length);
  showBoxes();
  showGear();
  if (any) stockFor(jobs);
  store();
  showDesk(numbers);
}

/* What is ticked, with the time when it was; and how far the visit is. */
function store() {
  const done = ticks.filter((box) => box.checked).map((box) => box.dataset.tick);
  next.hidden = !done.length;
  keep((visit) => {
    const before = visit.done;
    visit.done = {};
    done.forEach((step) => { visit.done[step] = before[step] || Date.now(); });
    visit.steps = steps.length;
  });
  if (steps.length) showStart();
  const open = every().some((visit) => visit.vehicle === known.address && Object.keys(visit.done).length > 0 && Object.keys(visit.done).length < visit.steps);
  if (open !== underWay) stay(known.address, underWay = open);
}

function showTicks() { ticks.forEach((box) => { box.checked = box.dataset.tick in kept().done; }); }

/* A visit that somebody chose; one that the address asked for stands there already. */
function changed(visit) {
  choose(visit);
  address();
}

page.addEventListener("change", (event) => {
  if (target(event).matches("[data-tick]")) store();
  else if (target(event).closest(".ut-choose")) {
    const pair = pairs.find((one) => one === event.target);
    if (pair) sidesOf(pair).forEach((box) => { box.checked = pair.checked; });
    changed(fromBoxes());
  }
});
reset.addEventListener("click", () => { changed({ jobs: [], car: {}, gear: {}, unread: [] }); });
next.addEventListener("click", () => {
  startAnother();
  showTicks();
  store();
});
start.addEventListener("click", (event) => {
  event.preventDefault();
  openScreen(steps);
});
document.addEventListener("ut-screen-left", (event) => {
  if (steps.length) showTotals(data, chosenJobs(), chosenCar(), steps);
  const step = stepItem(/** @type {CustomEvent} */ (event).detail);
  step.tabIndex = -1;
  step.focus({ preventScroll: true });
  step.scrollIntoView({ block: "center" });
});
heed(() => {
  showTicks();
  if (!steps.length) return;
  showTotals(data, chosenJobs(), chosenCar(), steps);
  showStart();
});
/* A visit from another device; the address that brought it is not shown, lest it be taken up twice. */
async function takeUp() {
  const got = await arrived();
  if (!got || got.vehicle !== known.address) return;
  resume(got);
  showTicks();
  choose(asked());
  address();
}

showTicks();
page.addEventListener("ut-visit", update);
begin(holdsStep);
if (brings()) takeUp();
else if (!chosen().unread.length) address();
