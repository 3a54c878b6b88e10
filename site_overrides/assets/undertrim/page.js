/* On every page: what was closed stays closed in print, and what scrolls sideways can be reached with the keyboard. */

import { all, target } from "./elements.js";
import "./reading.js";
import "./glossary.js";
import "./without-signal.js";
import { say } from "./words.js";

/* The theme opens every details element for print. Those that the reader left closed are marked, and the style hides what is in them. */
let printing = false;
const paper = window.matchMedia("print");

function note(item) {
  if (!printing && !paper.matches) item.classList.toggle("ut-shut", !item.open);
}

function noteAll() { all("details").forEach(note); }

window.addEventListener("beforeprint", () => { printing = true; });
window.addEventListener("afterprint", () => { printing = false; });
document.addEventListener("toggle", (event) => { if (target(event).matches("details")) note(event.target); }, true);

const INSIDE = "a[href], button, input, select, textarea, summary, [tabindex]";

let reached = 0; // two regions of a page may not have one name

/* The theme puts a landmark into every piece of code, all of one name. */
function plain() { all("pre nav").forEach((item) => { item.setAttribute("role", "none"); }); }

function reach() {
  plain();
  all("article .ut-scroll, article .ut-face, article .md-typeset__scrollwrap, article pre > code").forEach((box) => {
    const wide = box.scrollWidth > box.clientWidth && !box.querySelector(INSIDE);
    if (!wide || box.hasAttribute("tabindex")) return;
    box.tabIndex = 0;
    box.setAttribute("role", "region");
    const table = box.querySelector("caption, th");
    reached += 1;
    box.setAttribute("aria-label", say("page/scrolls", { number: String(reached), what: table ? table.textContent.trim() : say("page/scrolling-text") }));
  });
}

noteAll();
window.addEventListener("load", () => { noteAll(); reach(); });
window.addEventListener("resize", reach);
document.addEventListener("toggle", reach, true);
document.addEventListener("ut-visit", () => { setTimeout(() => { noteAll(); reach(); }); }); // what a visit put back into the page
