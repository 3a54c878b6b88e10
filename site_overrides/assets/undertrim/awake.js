/* The screen stays lit while a step is shown, where the browser can see to it; where not, the page says so. */

import { make } from "./elements.js";
import { say } from "./words.js";

let wanted = false;
let lock = null;
let refused = false;

async function hold() {
  if (!wanted || lock || document.visibilityState !== "visible") return;
  try {
    const got = await navigator.wakeLock.request("screen");
    lock = got;
    refused = false;
    got.addEventListener("release", () => { if (lock === got) lock = null; });
    if (!wanted) awake(false);
  } catch (error) { refused = true; }
  document.querySelectorAll(".ut-dims").forEach((line) => { /** @type {HTMLElement} */ (line).hidden = !refused; });
}

export function awake(on) {
  wanted = on;
  if (on) hold();
  else if (lock) {
    lock.release();
    lock = null;
  }
}

/* The word that the screen may go dark, to be hidden as long as it does not. */
export function dimmed() {
  const line = make("p", { class: "ut-dims" }, say("bay/goes-dark"));
  line.hidden = !refused;
  return line;
}

document.addEventListener("visibilitychange", hold); // the lock is lost with each look at another program
