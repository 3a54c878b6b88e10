/* A car that no record has: asked one question a screen, kept on this device, and sent as a claims file of which its record begins. */

import { whoAndWhen, you } from "./asking-car.js";
import { line, picks } from "./asking-inputs.js";
import { oneByOne } from "./asking-screen.js";
import { leading, newFileAddress, ways } from "./claims-leave.js";
import { all, byId, make } from "./elements.js";
import { list, say } from "./words.js";

/** @import { NewCar, NewCarField, NewCarScreen } from "published" */
/** @import { Screen } from "./asking-screen.js" */

const KEY = "undertrim:new-car", SEVERAL = "choices", MONTH = "month";
/** @type {NewCar} */
const asked = JSON.parse(byId("ut-new-car").textContent);
const page = /** @type {HTMLElement} */ (document.querySelector(".ut-new-car"));
let unkept = "";

/** What was said so far, by field. @returns {Record<string, string>} */
function said() {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) || unkept || "{}");
    return found && typeof found === "object" ? found : {};
  } catch (error) { return {}; }
}

/** @param {Record<string, string>} all */
function keep(all) {
  unkept = JSON.stringify(all);
  try { localStorage.setItem(KEY, unkept); } catch (error) { /* then it lasts as long as the page */ }
}

/* A month as a browser without a field for it lets it be typed. */
function isMonth(text) { return /^(19|20)[0-9]{2}-(0[1-9]|1[0-2])$/.test(text); }

/** The first month that is no longer covered. @param {string} last */
function after(last) {
  const [year, month] = last.split("-").map(Number);
  return month === 12 ? `${year + 1}-01` : `${year}-${String(month + 1).padStart(2, "0")}`;
}

/** @param {NewCarField} field */
function inputOf(field) {
  const before = said()[field.name] || "";
  if (field.choices.length) return { field, ...picks(field.choices, before, field.form === SEVERAL ? "checkbox" : "radio") };
  const given = field.form === MONTH ? { type: "month", placeholder: "2016-05" } : { maxlength: String(Math.min(field.most, 120)) };
  return { field, ...line(field.title, before, { name: field.name, ...given }, (text) => field.form === MONTH && !isMonth(text) ? say("new-car/month-wrong") : "") };
}

/** @param {NewCarScreen} screen @returns {Screen} */
function screenOf(screen) {
  const inputs = screen.fields.map(inputOf);
  const alone = inputs.length === 1;
  return {
    show: () => [make("h2", {}, screen.ask), make("p", {}, screen.why), ...inputs.map((one) => one.field.choices.length
      ? make("fieldset", { class: alone ? "ut-asked-alone" : "" }, make("legend", {}, one.field.title), one.node)
      : make("label", { class: "ut-name" }, one.field.title, one.node))],
    take() {
      const wrong = inputs.map((one) => one.wrong()).find(Boolean);
      const lacking = inputs.find((one) => one.field.must && !one.says());
      const now = { ...said(), ...Object.fromEntries(inputs.map((one) => [one.field.name, one.says()])) };
      if (!wrong) keep(now);
      if (wrong) return wrong;
      if (lacking) return say("new-car/one-needed", { title: lacking.field.title });
      return now.from && now.to && now.to < now.from ? say("new-car/months-turned") : "";
    },
    next: () => say("bay/next"),
  };
}

function isFilled(screen) {
  const now = said();
  const turned = now.from && now.to && now.to < now.from && screen.fields.some((field) => field.form === MONTH);
  return !turned && screen.fields.every((field) => !field.must || now[field.name]);
}

function lacking() { return asked.screens.filter((screen) => !isFilled(screen)); }

/* The description as its file has it. */
function file() {
  const now = said(), { by, on } = whoAndWhen();
  const fields = asked.screens.flatMap((screen) => screen.fields).filter((field) => now[field.name] && field.form !== MONTH);
  const told = fields.map((field) => [field.name, field.form === SEVERAL ? now[field.name].split(", ") : now[field.name]]);
  const car = { ...Object.fromEntries(told), built: { from: now.from, to: after(now.to) } };
  return `${JSON.stringify({ claims: 1, by, on, new_vehicle: car }, null, 1)}\n`;
}

function fileName() {
  const plain = `${said().make} ${said().model}`.normalize("NFKD").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
  return `undertrim-${plain || "car"}.json`;
}

function words(screen) {
  const now = said();
  const told = screen.fields.map((field) => list((now[field.name] || "").split(", ").map((word) => (field.choices.find((one) => one.word === word) || { says: word }).says), "comma")).filter(Boolean);
  return list(told, "semicolon") || say("new-car/nothing-said");
}

function show() {
  const left = lacking(), begun = Object.keys(said()).length > 0;
  const press = (words, click, more = "") => make("button", { type: "button", class: `ut-button ${more}`, click }, words);
  byId("ut-new-start").replaceChildren(
    ...left.length ? [press(say(begun ? "new-car/go-on" : "new-car/begin"), () => { dialog.open(page, begun ? asked.screens.indexOf(left[0]) + 1 : 0); }, "ut-asked-begin")] : [make("p", {}, make("b", {}, say("new-car/complete")))],
    ...left.length && begun ? [make("p", { role: "status" }, say("new-car/lacking", { count: left.length }))] : [],
    ...begun ? [make("p", {}, press(say("new-car/again"), () => { keep({}); show(); }))] : []);
  byId("ut-new-list").replaceChildren(...asked.screens.map((screen, place) => make("li", { class: isFilled(screen) && words(screen) !== say("new-car/nothing-said") ? "ut-asked-done" : "" },
    make("button", { type: "button", click: () => { dialog.open(page, place + 1); } }, make("b", {}, screen.ask), " ", make("small", {}, words(screen))))));
  byId("ut-new-leave").replaceChildren(...left.length || !whoAndWhen().by ? [] : [ways({ name: fileName(), text: file, photos: () => Promise.resolve([]) }, leading(newFileAddress(fileName(), file()), say("not-so/new-file")))]);
}

const dialog = oneByOne(say("new-car/title"), () => [you(false), ...asked.screens.map(screenOf)], show);
all(".ut-noscript", page).forEach((one) => { one.remove(); });
show();
