/* One question about a car: why it matters, how it is measured, and the answer, which becomes claims on this device. */

import { carSaid, choicesOf, instrument, sameCar, whoAndWhen } from "./asking-car.js";
import { inputOf, picks } from "./asking-inputs.js";
import { photoInput } from "./asking-photo.js";
import { claims, replace } from "./claims.js";
import { byId, make } from "./elements.js";
import { list, say } from "./words.js";

/** @import { Asked, AskedField, AskedQuestion } from "published" */
/** @import { Claim } from "./claims.js" */
/** @import { Screen } from "./asking-screen.js" */
/** @typedef {{ field: AskedField, box: HTMLElement, answer: () => { says?: string, found?: string } | null, wrong: () => string, clear: () => void }} Part */

const NONE = "none", CANNOT_TELL = "cannot-tell", MEASURED = "measured", FOUND = "found:";

/** @param {Asked} asked @param {string} about @returns {(one: Claim) => boolean} */
function isHere(asked, about) {
  const car = carSaid(asked);
  return (one) => one.vehicle === asked.vehicle && one.about === about && sameCar(one.car, car);
}

/** The answer that was given at this car. @param {Asked} asked @param {string} about @returns {Claim | undefined} */
export function answered(asked, about) { return claims().find(isHere(asked, about)); }

/** What was answered, in words. @param {AskedField} field @param {Claim} claim */
export function answerWords(field, claim) {
  if (claim.found) return say(claim.found === NONE ? "asked/none-looked" : claim.found === CANNOT_TELL ? "not-so/found-cannot-tell" : "not-so/found-not-so");
  const called = (word) => ((field.choices || []).find((one) => one.word === word) || { says: word }).says;
  return field.choices ? list(claim.says.split(", ").map(called), "comma") : claim.says;
}

/** Those that this car can answer. @param {Asked} asked */
export function questionsHere(asked) {
  const car = carSaid(asked), choices = car ? choicesOf(asked, car) : {};
  return (asked.questions || []).filter((one) => Object.entries(one.cars || {}).every(([name, wanted]) => wanted.includes(choices[name])));
}

/** Whether it has an answer: all of its fields have one that must. @param {Asked} asked @param {AskedQuestion} question */
export function isAnswered(asked, question) {
  const said = (about) => (answered(asked, about) || {}).says;
  return question.fields.filter((field) => !field.optional && (!field.only_if || field.only_if.words.includes(said(field.only_if.about)))).every((field) => answered(asked, field.about));
}

/* What may be said in the place of a value: that there is none also where it may be left out, since square is not the same as unsaid. */
function instead(field) {
  const none = field.none || field.form === "there" ? [{ word: NONE, says: say("asked/none-looked") }] : [];
  return [...none, ...field.optional ? [] : [{ word: CANNOT_TELL, says: say("not-so/found-cannot-tell") }]];
}

/* A word to choose, and what may be said instead: of all these one counts. */
function chosen(field, before) {
  const others = instead(field).map(({ word, says }) => ({ word: FOUND + word, says }));
  const all = picks([...field.choices || [], ...others], before ? before.says || FOUND + before.found : "");
  const answer = () => all.says().startsWith(FOUND) ? { found: all.says().slice(FOUND.length) } : all.says() ? { says: all.says() } : null;
  return { nodes: [all.node], answer, wrong: () => "", clear: all.clear };
}

/* A value that is typed or touched, and boxes for what may be said instead; who does one of the two takes the other back. */
function typed(field, before, asked) {
  const input = inputOf(field, before && before.says || "", asked), boxes = picks(instead(field), before && before.found || "", "checkbox");
  const node = make("div", { input: boxes.clear, click: (event) => { if (event.target.closest("svg a")) boxes.clear(); } }, input.node);
  boxes.node.addEventListener("input", (event) => {
    const box = /** @type {HTMLInputElement} */ (event.target), { checked } = box;
    boxes.clear();
    box.checked = checked;
    if (checked) input.clear();
  });
  const answer = () => boxes.says() ? { found: boxes.says() } : input.says() ? { says: input.says() } : null;
  return { nodes: [node, boxes.node], answer, wrong: () => boxes.says() ? "" : input.wrong(), clear: () => { input.clear(); boxes.clear(); } };
}

/** A value with what may be said instead of it. @param {Asked} asked @param {AskedField} field @returns {Part} */
function part(asked, field) {
  const before = answered(asked, field.about);
  const { nodes, ...input } = field.form === "choice" || field.form === "there" ? chosen(field, before) : typed(field, before, asked);
  const box = make("fieldset", { class: "ut-asked-field" }, make("legend", {}, field.title), make("p", {}, make("small", {}, field.means)),
    ...field.stands && field.stands !== "unknown" ? [make("p", {}, say("asked/so-far", { value: field.stands }))] : [],
    ...field.optional ? [make("p", {}, make("small", {}, say("asked/optional")))] : [], ...nodes);
  return { field, box, ...input };
}

function drawings(question) {
  return Array.from(new Set(question.fields.map((field) => field.drawing).filter(Boolean)), (name) => {
    const drawn = /** @type {HTMLTemplateElement} */ (byId(`ut-how-${name}`));
    return make("figure", { class: "ut-sketch" }, drawn.content.cloneNode(true));
  });
}

/* How it is known. What can hurt people is looked up or told, and then it matters which; else something is measured, or it is seen. */
function ways(question, before) {
  const measured = question.fields.some((field) => field.form === "quantity") && instrument();
  const usual = question.looked_up ? "" : measured ? MEASURED : "seen";
  const hows = [...measured && !question.looked_up ? [MEASURED] : [], "seen", "maker", "told"];
  return picks(hows.map((how) => ({ word: how, says: say(`not-so/how-${how}`) })), before ? before.how : usual);
}

/** @param {Asked} asked @param {AskedQuestion} question @returns {Screen} */
export function questionScreen(asked, question) {
  const parts = question.fields.map((field) => part(asked, field));
  const before = question.fields.map((field) => answered(asked, field.about)).find(Boolean);
  const how = ways(question, before);
  const note = /** @type {HTMLTextAreaElement} */ (make("textarea", { rows: "2", maxlength: "500", "aria-label": say("asked/note") }));
  note.value = before && before.note || "";
  const photo = photoInput(question.fields[0], before);
  const back = make("p", {}, make("button", { type: "button", class: "ut-button", click: () => { parts.forEach((one) => { one.clear(); }); showParts(); } }, say("asked/take-back")));

  function said(about) {
    const found = parts.find((one) => one.field.about === about), answer = found && found.answer();
    return answer && answer.says || "";
  }
  function asks({ field }) { return !field.only_if || field.only_if.words.includes(said(field.only_if.about)); }
  function showParts() {
    parts.forEach((one) => { one.box.hidden = !asks(one); });
    back.hidden = !answers().length;
  }
  function answers() { return parts.filter((one) => asks(one) && one.answer()); }

  /** @param {Part} one @returns {Claim} */
  function claim(one, first) {
    const { by, on } = whoAndWhen(), known = how.says(), { stands } = one.field;
    const optional = { was: stands, with: known === MEASURED ? instrument() : "", note: first ? note.value.trim() : "" };
    return /** @type {Claim} */ ({ vehicle: asked.vehicle, about: one.field.about, ...one.answer(), how: known, on, by, car: carSaid(asked),
      ...Object.fromEntries(Object.entries(optional).filter(([, text]) => text)), ...first && photo.says() ? { photo: photo.says() } : {} });
  }

  return {
    show() {
      showParts();
      return [
        make("h2", {}, question.ask), make("p", {}, question.why),
        ...question.cars_words ? [make("p", {}, make("small", {}, say("asked/for-cars", { cars: question.cars_words })))] : [],
        ...drawings(question), make("div", { input: showParts, click: showParts }, ...parts.map((one) => one.box)),
        ...question.looked_up ? [make("fieldset", { class: "ut-asked-field" }, make("legend", {}, say("ask/how")), how.node)] : [],
        make("details", { class: "ut-asked-more", open: Boolean(before && (before.note || before.photo)) }, make("summary", {}, say("asked/more")),
          make("label", { class: "ut-note" }, say("asked/note"), note), photo.node,
          ...question.looked_up ? [] : [make("fieldset", {}, make("legend", {}, say("ask/how")), how.node)]),
        back,
        ...question.how ? [make("p", {}, make("a", { href: `../../${question.how}` }, say("asked/how")))] : [],
      ];
    },
    take() {
      const given = answers();
      const wrong = given.map((one) => one.wrong()).find(Boolean);
      if (wrong) return wrong;
      if (given.length && !how.says()) return say("asked/how-wanted");
      parts.forEach((one) => {
        const claimed = given.includes(one) ? claim(one, one === given[0]) : null;
        if (claimed || answered(asked, one.field.about)) replace(isHere(asked, one.field.about), claimed);
      });
      return "";
    },
    next: () => answers().length ? say("asked/keep") : say("asked/later"),
  };
}
