/* The steps of a visit and what is said beside them. Those of other visits are not in the document. */

import { known } from "./chosen.js";
import { all, byId } from "./elements.js";
import { unpacked } from "./packed.js";
import { whole } from "./page-data.js";
import { list, say } from "./words.js";

export const data = whole(unpacked(JSON.parse(byId("ut-data").textContent)));
const stepList = byId("ut-steps");
/** @type {Record<string, HTMLElement>} */
const items = {};
all(".ut-step", stepList).forEach((item, number) => { items[number] = item; });
export const ticks = Object.keys(items).map((number) => {
  const tick = /** @type {HTMLInputElement} */ (items[number].querySelector(".ut-tick > input"));
  tick.dataset.tick = data.steps[number].id;
  return tick;
});

/* Cautions that several steps have were sent once. */
const once = document.getElementById("ut-cautions");
all(".ut-brief > a", stepList).forEach((link) => {
  const full = /** @type {HTMLElement} */ (document.getElementById(link.getAttribute("href").slice(1)).cloneNode(true));
  full.removeAttribute("id");
  link.parentElement.replaceWith(full);
});
if (once) once.remove();

const stated = {};
const cautions = {};
const marked = {};
Object.keys(items).forEach((number) => {
  const line = items[number].querySelector(".ut-state");
  const item = line && line.nextSibling; // a text, for which jobs the step is
  stated[number] = line && { line, words: line.textContent };
  marked[number] = { item, words: item.textContent };
  cautions[number] = all(".ut-caution", items[number]).map((box) => ({ words: box.textContent, danger: box.classList.contains("ut-danger"), box, ...brief(box) }));
});
/** @type {Record<string, HTMLElement>} */
const headings = {};
all("[data-section]", stepList).forEach((item) => { headings[item.dataset.section] = headings[item.dataset.section] || item; });

/** @type {Record<string, Node[]>} */
const clones = {};

function put(line, words) { if (line.textContent !== words) line.textContent = words; }

/* Whether a step that is not shown has this id. */
export function holdsStep(id) { return Object.keys(items).some((number) => items[number].id === id && items[number].parentNode === null); }

/* A step as the list has it. */
export function stepItem(number) { return items[number]; }

/* What a step is called, as the list has it. */
export function titleOf(number) { return items[number].querySelector(".ut-title").textContent.trim().replace(/\s+/g, " "); }

/* Whether a step tries something, so that there is something to note. */
export function isTest(number) { return ["test", "try", "measure"].some((kind) => items[number].classList.contains("ut-kind-" + kind)); }

/* The cautions of a step in full. */
export function cautionsOf(number) { return cautions[number].map((caution) => caution.box); }

export function setDone(number, done) {
  const tick = /** @type {HTMLInputElement} */ (items[number].querySelector(".ut-tick > input"));
  if (tick.checked === done) return;
  tick.checked = done;
  tick.dispatchEvent(new Event("change", { bubbles: true }));
}

/* A heading for each time that its section begins. */
function headingOf(section, time) {
  const made = clones[section] || (clones[section] = []);
  made[time] = made[time] || headings[section].cloneNode(true);
  return made[time];
}

function listed(numbers) {
  const times = {};
  let last = "";
  return numbers.flatMap((number) => {
    const { section } = data.steps[number], begins = section !== last;
    last = section;
    if (!begins) return [items[number]];
    times[section] = (times[section] || 0) + 1;
    return [headingOf(section, times[section]), items[number]];
  });
}

/* What stays where it is, is left alone: whatever is put in anew must be laid out anew. */
export function showSteps(numbers) {
  const wanted = listed(numbers), kept = new Set(wanted);
  Array.from(stepList.childNodes).forEach((item) => { if (!kept.has(item)) item.remove(); });
  let next = stepList.firstChild;
  wanted.forEach((item) => {
    if (item === next) next = next.nextSibling;
    else stepList.insertBefore(item, next);
  });
}

/* Battery and ignition beside each step, over the steps of this visit: of several batteries one may be off and another on.
   With the car left open there is no one run of steps, and what holds in all of them stands there already. */
export function showStates(numbers, oneCar) {
  const batteries = {};
  Object.keys(stated).forEach((number) => { if (stated[number] && !oneCar) put(stated[number].line, stated[number].words); });
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
    if (stated[number]) put(stated[number].line, list([say(`states/battery-${now.battery}`), say(`states/ignition-${now.ignition}`)], "comma"));
  });
}

/* A caution that the step just before has too is cut short, as in the plan and on the sheet; DANGER never is. For each caution of each step
   the step before which it is in full, counted from 1; 0 where it is in full itself. */
export function toldBefore(numbers) {
  let told = {};
  return numbers.map((number, at) => {
    const here = {};
    const steps = cautions[number].map((caution) => {
      const first = caution.words in told ? told[caution.words] : at;
      here[caution.words] = first;
      return first === at || caution.danger ? 0 : first + 1;
    });
    told = here;
    return steps;
  });
}

/* Signal word and hazard in one line, and where the rest of it is told. */
function brief(box) {
  const line = document.createElement("p"), word = document.createElement("b"), where = document.createTextNode("");
  line.className = box.className + " ut-brief";
  word.textContent = box.firstElementChild.textContent;
  line.append(word, " ", ...box.querySelector("p + p > b").cloneNode(true).childNodes, " ", where);
  return { line, where };
}

export function showCautions(numbers) {
  toldBefore(numbers).forEach((steps, at) => {
    cautions[numbers[at]].forEach(({ box, line, where }, index) => {
      const step = steps[index];
      if (step) where.data = say("cautions/in-full-before", { step });
      (step ? box : line).replaceWith(step ? line : box);
    });
  });
}

/* For which of the jobs a step is, where there are several; each by its mark. */
export function showMarks(numbers, jobs) {
  numbers.forEach((number) => {
    const { item, words } = marked[number];
    const marks = known.targets.filter((target, at) => jobs.includes(target.id) && items[number].classList.contains(`ut-for-${at + 1}`)).map((target) => target.mark);
    put(item, jobs.length ? jobs.length > 1 ? ` ${say("vehicle-page/for", { marks: list(marks, "comma") })}\u2003` : " " : words);
  });
}
