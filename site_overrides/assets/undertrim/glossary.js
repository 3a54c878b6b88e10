/* Words of the glossary are explained where they stand, each once in a section: a button in the text shows what it means. Without scripts the glossary
   is a page like any other. The words come as a script that calls undertrimGlossary(), so that they also load from a folder on disk. */

import { all, make, target } from "./elements.js";
import { BASE } from "./keeper-asked.js";
import { say } from "./words.js";

const IN = ".ut-book :is(p, li, td), .ut-vehicle :is(p, li, dd)";
const NOT = "a, button, label, summary, code, pre, svg, figure, h1, h2, h3, h4, legend, .ut-chip, .ut-foot, .ut-said, .ut-gear, .ut-desk";
/* A word is explained once in each of these; in a written page, once below each of its headings; in the list of steps, once in each part of the job. */
const SECTION = ".ut-screen-area, .ut-opening, .ut-connector, .ut-run, section";

/** @type {Map<string, string[]>} what it is called and what it means, by each of its names in small letters */
const known = new Map();
/** @type {RegExp} */
let pattern;

/* One for the page: nothing is explained while something else is. */
const word = make("b", {}), meaning = make("span", {});
const close = make("button", { type: "button", class: "ut-button", autofocus: true, click: () => { shown.hidePopover(); } }, say("bay/close"));
const shown = make("div", { class: "ut ut-meaning", popover: "auto", role: "dialog", "aria-label": say("glossary/meaning") },
  make("p", {}, word, " ", meaning), make("p", { class: "ut-meaning-do" }, make("a", { href: BASE + "glossary.html" }, say("glossary/all")), close));

function plain(text) { return text.toLowerCase().replace(/[.*+?^${}()|[\]\\]/g, "\\$&"); }

window.undertrimGlossary = (entries) => {
  entries.forEach(([names, text]) => { names.forEach((one) => { known.set(one.toLowerCase(), [names.join(", "), text]); }); });
  if (!known.size) return;
  const words = Array.from(known.keys()).sort((a, b) => b.length - a.length).map(plain).join("|");
  pattern = new RegExp(`(?<![\\p{L}\\p{N}-])(${words})(?:e?s)?(?![\\p{L}\\p{N}-])`, "giu");
  mark(document);
  document.addEventListener("ut-visit", () => { later(() => { mark(document); }); });
  document.addEventListener("ut-step", (event) => { mark(/** @type {CustomEvent} */ (event).detail); });
};

/* The texts of an element in which words may be explained. */
function texts(within) {
  const found = [], walker = document.createTreeWalker(within, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const text = /** @type {Text} */ (walker.currentNode);
    if (!text.parentElement.closest(NOT)) found.push(text);
  }
  return found;
}

/* What an element belongs to, in which a word is explained but once. */
function sectionOf(element) {
  const within = element.closest(".ut-screen-area") || element.closest(".ut-step, .ut-book > *");
  if (!within) return element.closest(SECTION) || document.body;
  let at = within;
  while (at.previousElementSibling && !at.matches(".ut-screen-area, .ut-section, h2, h3")) at = at.previousElementSibling;
  return at;
}

/* Explains what stands below an element, and is not explained in its section yet. */
function mark(within) {
  /** @type {Map<Element, Set<string>>} */
  const explained = new Map();
  const met = (element) => {
    const section = sectionOf(element);
    if (!explained.has(section)) explained.set(section, new Set());
    return explained.get(section);
  };
  all(".ut-term", within).forEach((one) => { met(one).add(one.dataset.term); });
  all(IN, within).forEach((element) => { texts(element).forEach((text) => { split(text, met(element)); }); });
}

/* Puts a button in the place of the first of each word that is not met yet. */
function split(text, met) {
  pattern.lastIndex = 0;
  for (let found = pattern.exec(text.data); found; found = pattern.exec(text.data)) {
    const [term] = known.get(found[1].toLowerCase());
    if (met.has(term)) continue;
    met.add(term);
    const rest = text.splitText(found.index + found[0].length);
    text.splitText(found.index).replaceWith(make("button", { type: "button", class: "ut-term", "data-term": term, "data-word": found[1].toLowerCase(), "aria-haspopup": "dialog" }, found[0]));
    text = rest;
    pattern.lastIndex = 0;
  }
}

/* Beside the word where there is room; at the lower edge, by the thumb, where there is not. */
function place(button) {
  const box = button.getBoundingClientRect(), narrow = innerWidth < 700;
  shown.style.top = narrow || box.bottom > innerHeight - 200 ? "auto" : `${box.bottom + 8}px`;
  shown.style.bottom = narrow ? "0" : box.bottom > innerHeight - 200 ? `${innerHeight - box.top + 8}px` : "auto";
  shown.style.left = narrow ? "0" : `${Math.max(8, Math.min(box.left, innerWidth - 488))}px`;
}

document.addEventListener("click", (event) => {
  const button = target(event).closest(".ut-term");
  if (!(button instanceof HTMLElement)) return;
  [word.textContent, meaning.textContent] = known.get(button.dataset.word);
  (button.closest("dialog") || document.querySelector("article")).append(shown); // what is outside a dialog cannot be reached while it is open
  place(button);
  shown.showPopover();
});

function later(work) { (window.requestIdleCallback || setTimeout)(work); }

/* A browser that cannot show one over the page gets the words as they are. */
if ("showPopover" in HTMLElement.prototype && document.querySelector(".ut-book, .ut-vehicle") && !location.pathname.endsWith("/glossary.html")) {
  window.addEventListener("load", () => { later(() => { document.head.append(make("script", { src: BASE + "assets/undertrim/glossary-words.js" })); }); });
}
