/* What a car still wants to know: the list with what was answered, one question over the screen at a time, and the answers on their way out. */

import { carSaid, carScreens, carWords, forgetCar, instrument, whoAndWhen } from "./asking-car.js";
import { answered, answerWords, isAnswered, questionScreen, questionsHere } from "./asking-question.js";
import { oneByOne } from "./asking-screen.js";
import { showClaims } from "./claims-list.js";
import { byId, make } from "./elements.js";
import "./not-so.js";
import { begin } from "./visit-shown.js";
import { say } from "./words.js";

/** @import { Asked, AskedQuestion } from "published" */

/** @type {Asked} */
const asked = JSON.parse(byId("ut-asked").textContent);
const page = /** @type {HTMLElement} */ (document.querySelector(".ut-vehicle"));
const start = byId("ut-asked-start"), items = byId("ut-asked-list");
const dialog = oneByOne(say("asked/one-by-one"), screens, show);

function screens() { return [...carScreens(asked), ...questionsHere(asked).map((one) => questionScreen(asked, one))]; }

/* The first screen that is still to be answered; the first of all where nobody has said which car it is. */
function openAt(question) {
  const before = carSaid(asked) ? carScreens(asked).length : 0;
  dialog.open(page, before && question ? before + questionsHere(asked).indexOf(question) : before);
}

function press(words, click, more = "") { return make("button", { type: "button", class: `ut-button ${more}`, click }, words); }

function carSummary() {
  const car = carSaid(asked);
  if (!car) return [];
  const { by } = whoAndWhen(), said = { who: by, car: carWords(asked, car) };
  return [make("p", {}, make("b", {}, say("asked/of-this-car")), " ", instrument() ? say("asked/car-said", { ...said, with: instrument() }) : say("asked/car-said-bare", said)),
    make("p", { class: "ut-report-do" }, press(say("asked/which-car"), () => { dialog.open(page, 0); }),
      press(say("asked/other-car"), () => { forgetCar(asked); show(); byId("ut-asked-said").textContent = say("asked/other-car-done"); }))];
}

function showStart() {
  const here = questionsHere(asked), left = here.filter((one) => !isAnswered(asked, one)), others = asked.questions.length - here.length;
  const words = carSaid(asked) ? left.length < here.length ? say("asked/go-on", { count: left.length }) : say("asked/begin", { count: left.length }) : say("asked/begin", { count: asked.questions.length });
  start.replaceChildren(
    ...carSaid(asked) && !left.length ? [make("p", {}, make("b", {}, say("asked/all-answered")))] : [press(words, () => { openAt(left[0]); }, "ut-asked-begin")],
    ...carSummary(), ...carSaid(asked) && others ? [make("p", {}, make("small", {}, say("asked/not-this-car", { count: others })))] : [],
    make("p", { role: "status", id: "ut-asked-said" }));
}

/** @param {AskedQuestion} question */
function state(question) {
  const given = question.fields.map((field) => ({ field, claim: answered(asked, field.about) })).filter((one) => one.claim);
  return given.length ? say("asked/answered", { value: given.map(({ field, claim }) => answerWords(field, claim)).join("; ") }) : say("asked/no-answer");
}

function showItem(question) {
  const given = isAnswered(asked, question);
  return make("li", { class: given ? "ut-asked-done" : "" }, make("button", { type: "button", click: () => { openAt(question); } },
    make("b", {}, question.ask), " ", make("small", {}, state(question))));
}

function show() {
  showStart();
  items.replaceChildren(...(carSaid(asked) ? questionsHere(asked) : asked.questions).map(showItem));
}

begin();
if (start) {
  show();
  document.addEventListener("ut-claims", show);
}
showClaims(byId("ut-claims"));
