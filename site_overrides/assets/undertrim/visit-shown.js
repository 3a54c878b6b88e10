/* What all of a vehicle's pages do with a visit: say what it is, and have in the document what concerns it and nothing else. */

import { choose, chosen, chosenCar, chosenJobs, everythingShown, known, page } from "./chosen.js";
import { condition } from "./concerns.js";
import { all, byId } from "./elements.js";
import { fetchNames, gearNames } from "./gear-names.js";
import { keptOut, place, standsIn } from "./placed.js";
import { asked, link } from "./visit-kept.js";
import { list, say } from "./words.js";

let conditional = conditionsIn(page);
all(".ut-noscript, .ut-only", page).forEach((item) => { item.remove(); });
page.classList.add("ut-live");

const button = byId("ut-everything");

function conditionsIn(place) { return all("[data-clauses], [data-openings], [data-cars]", place).map((item) => ({ item, concerns: condition(item) })); }

/**
 * What is below an element from now on; as with all of the page, what of it concerns no visit leaves the document when a visit is shown next.
 * @param {HTMLElement} holder
 * @param {...Node} inside
 */
export function renew(holder, ...inside) {
  const before = conditional.filter(({ item }) => item !== holder && standsIn(item, holder));
  before.forEach(({ item }) => { place(item, true); });
  holder.replaceChildren(...inside);
  conditional = conditional.filter((one) => !before.includes(one)).concat(conditionsIn(holder));
}

function said(words, otherwise) { return list(words, "semicolon") || otherwise; }

function jobWords(visit) {
  const openings = known.targets.filter((target) => visit.jobs.includes(target.id)).map((target) => {
    const gear = gearNames(visit, target.opening);
    return gear.length ? say("vehicle-page/with-gear", { openings: target.name, gear: list(gear, "comma") }) : target.name;
  });
  return said(openings, say("vehicle-page/not-chosen"));
}

function carWords(visit) {
  return said(Object.keys(visit.car).map((name) => (known.variants[name] || {})[visit.car[name]] || visit.car[name]), say("vehicle-page/every-car"));
}

function showWords() {
  const visit = chosen(), every = everythingShown();
  byId("ut-visit-job").textContent = every ? say("vehicle-page/all-jobs") : jobWords(visit);
  byId("ut-visit-car").textContent = every ? say("vehicle-page/every-car") : carWords(visit);
  const unread = byId("ut-unread");
  unread.hidden = !visit.unread.length;
  unread.textContent = visit.unread.length ? say("vehicle-page/unread", { count: visit.unread.length, words: list(visit.unread, "comma") }) : "";
  button.textContent = say(every ? "vehicle-page/only-the-visit" : "vehicle-page/show-everything");
}

function update() {
  const jobs = chosenJobs(), car = chosenCar();
  conditional.forEach(({ item, concerns }) => { place(item, concerns(jobs, car)); });
  showWords();
  fetchNames(chosen()).then((came) => { if (came) showWords(); });
  link();
}

/* An address or a link may lead to what the visit leaves out: then everything is shown. */
function lookForPlace(elsewhere) {
  const id = decodeURIComponent(location.hash.slice(1));
  if (id && (keptOut(id) || elsewhere(id))) choose(chosen(), true);
  const found = id && document.getElementById(id);
  if (found) found.scrollIntoView();
}

/**
 * To be called once, before anything is shown. A page with other ways to keep things out of the document says whether it does.
 * @param {(id: string) => boolean} elsewhere
 */
export function begin(elsewhere = () => false) {
  button.addEventListener("click", () => { choose(chosen(), !everythingShown()); });
  window.addEventListener("hashchange", () => { lookForPlace(elsewhere); });
  choose(asked());
  lookForPlace(elsewhere);
}

page.addEventListener("ut-visit", update);
