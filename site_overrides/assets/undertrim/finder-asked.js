/* The box that finds, on every page: what it finds with is asked for when somebody comes to it. On the first page it is there at once. */

import { all, byId } from "./elements.js";

const base = /** @type {HTMLScriptElement} */ (document.currentScript).src.replace(/assets\/undertrim\/[^/]*$/, "");
const input = byId("ut-query");
let asked = false;

function ask() {
  if (asked) return;
  asked = true;
  const script = document.createElement("script");
  script.src = base + "assets/undertrim/finder.js";
  script.onerror = () => { asked = false; script.remove(); };
  document.head.append(script);
}

if (input) {
  all(".ut-home > .ut-noscript").forEach((item) => { item.remove(); });
  byId("ut-find").hidden = false;
  input.addEventListener("focus", ask);
  input.addEventListener("input", ask);
  if (input.hasAttribute("autofocus")) input.focus({ preventScroll: true }); // the browser has passed it over while it was hidden
}
