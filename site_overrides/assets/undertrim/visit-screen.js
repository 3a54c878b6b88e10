/* One step of a visit at a time, over the whole screen: for gloves, at arm's length. The list below it is the same visit with the same ticks. */

import { chosenCar } from "./chosen.js";
import { all, make } from "./elements.js";
import { awake, dimmed } from "./awake.js";
import { beginAgain, began, waited, waitWords } from "./visit-clock.js";
import { placeShown } from "./visit-car.js";
import { heed, keep, kept } from "./visit-kept.js";
import { lookInto, spoiltBeside, trayWords } from "./screen-tray.js";
import { cautionsOf, data, isTest, setDone, stepItem, titleOf, toldBefore } from "./visit-steps.js";
import { looks } from "./visit-tray.js";
import { minutesLeft } from "./visit-totals.js";
import { number as spoken, say, tag } from "./words.js";

/** @type {string[]} the steps by number, as the list has them */
let numbers = [];
let at = 0;
let told = [];
let lookedInto = [];
let ticking = 0;

const where = make("b", { class: "ut-screen-where" }), part = make("span", { class: "ut-screen-part" }), left = make("span", { class: "ut-screen-left" });
const bar = /** @type {HTMLProgressElement} */ (make("progress", { "aria-hidden": "true" }));
const toList = make("button", { type: "button", class: "ut-button", click: close }, say("bay/all-steps"));
const state = make("p", { class: "ut-screen-state" });
const area = make("div", { class: "ut-screen-area", scroll: noteSeen });
const inTray = make("p", { class: "ut-screen-tray" });
const answer = make("p", { class: "ut-screen-answer", role: "status" });
const back = make("button", { type: "button", class: "ut-button ut-back", click: () => { go(at - 1); } }, say("bay/back"));
const done = make("button", { type: "button", class: "ut-button ut-done", click: press });
const dialog = /** @type {HTMLDialogElement} */ (make("dialog", { class: "ut ut-screen", "aria-label": say("bay/one-at-a-time"), close: closed, keydown: key, touchstart: touch, touchend: swipe },
  make("header", { class: "ut-screen-top" }, make("div", { class: "ut-screen-row" }, toList, make("p", {}, where, " ", part)), bar, make("div", { class: "ut-screen-row ut-screen-about" }, state, left)),
  area,
  make("footer", { class: "ut-screen-foot" }, inTray, answer, make("div", { class: "ut-screen-row" }, back, done))));

/** @type {Set<HTMLElement>} */
let unseen = new Set();

function steps() { return numbers.map((number) => data.steps[number]); }
function isDone(step) { return step.id in kept().done; }
function here() { return data.steps[numbers[at]]; }
function before() { return at ? data.steps[numbers[at - 1]] : null; }

/* A caution was seen when its lower edge was on the screen. */
function noteSeen() {
  const edge = area.getBoundingClientRect().bottom + 4;
  unseen.forEach((box) => { if (box.getBoundingClientRect().bottom <= edge) unseen.delete(box); });
  showDone();
}

/* That a caution is not yet read, or a wait not yet over, is said where the thumb is. */
function showDone() {
  const over = at >= numbers.length;
  done.textContent = over ? say("bay/close") : unseen.size ? say("bay/read-on") : isDone(here()) ? say("bay/next") : say("bay/done");
  back.hidden = at === 0;
}

/** @param {MouseEvent} event */
function press(event) {
  if (event.detail > 1) return; // a finger that bounced; the word under it may have changed meanwhile
  if (at >= numbers.length) { close(); return; }
  const [first] = unseen, step = here();
  if (first) {
    area.scrollBy({ top: first.getBoundingClientRect().bottom - area.getBoundingClientRect().bottom + 16 });
    noteSeen();
    return;
  }
  if (step.wait && !isDone(step) && (!began(step, before()) || waited(step, before()).left)) { answer.textContent = waitWords(step, before()); return; }
  setDone(numbers[at], true);
  go(at + 1);
}

function go(to) {
  if (to < 0 || to > numbers.length) return;
  at = to;
  show();
  area.scrollTop = 0;
  const heading = area.querySelector("h2");
  heading.tabIndex = -1;
  heading.focus({ preventScroll: true });
}

/* The step as the list has it, without what is a mark of the list alone. */
function copy(number) {
  const item = /** @type {HTMLElement} */ (stepItem(number).cloneNode(true));
  const foot = item.querySelector(".ut-foot"), head = item.querySelector(".ut-head");
  state.textContent = foot.querySelector(".ut-state") ? foot.querySelector(".ut-state").textContent : "";
  foot.querySelectorAll(".ut-state").forEach((one) => { one.remove(); });
  all(".ut-caution", item).forEach((box) => { box.remove(); });
  all("[id]", item).forEach((one) => { one.removeAttribute("id"); });
  const title = /** @type {HTMLElement} */ (item.querySelector(".ut-title"));
  head.replaceWith(make("div", { class: "ut-head" }, make("h2", { lang: title.lang || false }, ...title.childNodes), ...all(".ut-meta", head)));
  return make("div", { class: item.className }, ...item.childNodes);
}

/* What an earlier step told in full is a line that opens. */
function cautions(number, steps) {
  return cautionsOf(number).map((box, index) => {
    const whole = /** @type {HTMLElement} */ (box.cloneNode(true));
    if (!steps[index]) {
      unseen.add(whole);
      return whole;
    }
    const hazard = whole.querySelector("p + p > b");
    return make("details", { class: whole.className + " ut-told" }, make("summary", {}, make("b", {}, whole.firstElementChild.textContent), " ", hazard.textContent), whole.lastElementChild);
  });
}

function show() {
  const many = numbers.length, over = at >= many;
  clearInterval(ticking);
  unseen = new Set();
  answer.textContent = "";
  where.textContent = over ? "" : say("bay/where", { step: at + 1, count: many });
  part.textContent = over ? "" : data.sections[here().section];
  bar.max = many;
  bar.value = numbers.filter((number) => isDone(data.steps[number])).length;
  left.textContent = over ? "" : minutesLeft(steps().filter((step) => !isDone(step)));
  if (over) showEnd();
  else showStep(numbers[at], here());
  inTray.textContent = trayWords(steps(), isDone, at, chosenCar());
  noteSeen();
}

function showStep(number, step) {
  area.replaceChildren(...cautions(number, told[at]), placeShown(step.at, data.places, chosenCar()), copy(number));
  spoiltBeside(area, step, chosenCar(), show);
  if (step.wait) area.append(clock(step));
  if (lookedInto.includes(at)) area.append(lookInto(steps(), isDone, at, chosenCar(), go));
  if (isDone(step)) area.append(undo(number, step));
  area.append(note(number, step), dimmed());
  area.dataset.step = step.id;
  document.dispatchEvent(new CustomEvent("ut-step", { detail: area })); // its words may be explained, and what it says may not be so
}

function undo(number, step) {
  const when = new Date(kept().done[step.id]).toLocaleTimeString(tag(), { timeStyle: "short" });
  return make("p", { class: "ut-was-done" }, say("bay/done-at", { time: when }), " ", make("button", { type: "button", class: "ut-button", click: () => { setDone(number, false); go(at); } }, say("bay/not-done")));
}

function clock(step) {
  const face = make("output", { class: "ut-clock" });
  const tick = () => { face.textContent = waitWords(step, before()); };
  if (!isDone(step) && !before() && !began(step, null)) beginAgain(step);
  tick();
  if (!began(step, before())) return make("p", { class: "ut-wait" }, face);
  if (!isDone(step)) ticking = window.setInterval(tick, 1000);
  return make("p", { class: "ut-wait" }, face, " ", make("button", { type: "button", class: "ut-button", click: () => { beginAgain(step); tick(); } }, say("bay/wait-again")));
}

function note(number, step) {
  const test = isTest(number);
  const box = /** @type {HTMLTextAreaElement} */ (make("textarea", { rows: "2", change: () => {
    keep((one) => {
      delete one.notes[step.id];
      if (box.value.trim()) one.notes[step.id] = box.value.trim();
    });
  } }));
  box.value = kept().notes[step.id] || "";
  const label = make("label", { class: "ut-note" }, ...test ? [say("bay/reading")] : [], box);
  if (test) return label;
  box.setAttribute("aria-label", say("plugs/column-note"));
  return make("details", { open: Boolean(box.value) }, make("summary", {}, say("plugs/column-note")), label);
}

function showEnd() {
  state.textContent = "";
  const open = Array.from(numbers.keys()).filter((place) => !isDone(data.steps[numbers[place]]));
  const rest = open.length ? say("bay/left-undone", { count: open.length }) : say("bay/all-done");
  area.replaceChildren(make("h2", {}, say("bay/end")), make("p", {}, rest),
    make("ul", { class: "ut-undone" }, ...open.map((place) => make("li", {}, make("button", { type: "button", class: "ut-button", click: () => { go(place); } },
      say("bay/to-step", { step: spoken(place + 1), title: titleOf(numbers[place]) }))))),
    lookInto(steps(), isDone, at, chosenCar(), go));
}

/** @param {KeyboardEvent} event */
function key(event) {
  if (/** @type {HTMLElement} */ (event.target).closest("textarea, input")) return;
  if (event.key === "ArrowRight") go(at + 1);
  else if (event.key === "ArrowLeft") go(at - 1);
}

let touched = { x: 0, y: 0 };

/** @param {TouchEvent} event */
function touch(event) { touched = { x: event.changedTouches[0].clientX, y: event.changedTouches[0].clientY }; }

/** @param {TouchEvent} event */
function swipe(event) {
  const x = event.changedTouches[0].clientX - touched.x, y = event.changedTouches[0].clientY - touched.y;
  if (Math.abs(x) < 70 || Math.abs(x) < 2 * Math.abs(y)) return;
  go(x < 0 ? at + 1 : at - 1);
}

function close() { dialog.close(); }

/* While nobody looks at it, it is not in the document. */
function closed() {
  clearInterval(ticking);
  awake(false);
  dialog.remove();
  document.dispatchEvent(new CustomEvent("ut-screen-left", { detail: numbers[Math.min(at, numbers.length - 1)] }));
}

/** The place of the first step that is not done; the first of all where every one is. */
export function nextPlace(of) {
  const place = of.findIndex((number) => !isDone(data.steps[number]));
  return place < 0 ? 0 : place;
}

/**
 * Opens at the first step that is not done.
 * @param {string[]} of the steps of the visit by number
 */
export function openScreen(of) {
  numbers = of;
  told = toldBefore(of);
  lookedInto = looks(steps(), chosenCar());
  document.querySelector(".ut-vehicle").append(dialog);
  dialog.showModal();
  awake(true);
  go(nextPlace(of));
}

heed(() => { if (dialog.open) show(); });
document.addEventListener("ut-stock", () => { if (dialog.open && area.querySelector("[data-kits]")) show(); });
window.addEventListener("resize", () => { if (dialog.open) noteSeen(); });
