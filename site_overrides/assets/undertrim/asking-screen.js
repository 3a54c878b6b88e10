/* One question over the whole screen, with Back and Next where the thumb is: for what is asked of a car. */

import { make } from "./elements.js";
import { say } from "./words.js";

/**
 * One screen. `show` gives what stands on it, a heading first; `take` keeps what was answered and says what is wrong with it, or nothing.
 * `next` is what the button says, asked for again after whatever is touched.
 * @typedef {{ show: () => HTMLElement[], take: () => string, next: () => string }} Screen
 */

/**
 * Makes the dialog.
 * @param {string} label what it is called
 * @param {() => Screen[]} screens as they are now: what is answered on one decides which come after it
 * @param {() => void} closed what to do when it was left
 */
export function oneByOne(label, screens, closed) {
  let at = 0;
  /** @type {Screen[]} */
  let all = [];
  const where = make("b", { class: "ut-screen-where" });
  const bar = /** @type {HTMLProgressElement} */ (make("progress", { "aria-hidden": "true" }));
  const area = make("div", { class: "ut-screen-area", input: renew, change: renew, click: renew });
  const wrong = make("p", { class: "ut-screen-answer", role: "alert" });
  const back = make("button", { type: "button", class: "ut-button ut-back", click: () => { go(at - 1); } }, say("bay/back"));
  const next = make("button", { type: "button", class: "ut-button ut-done", click: press });
  const dialog = /** @type {HTMLDialogElement} */ (make("dialog", { class: "ut ut-screen ut-asking", "aria-label": label, close: closed, keydown: key },
    make("header", { class: "ut-screen-top" }, make("div", { class: "ut-screen-row" }, make("button", { type: "button", class: "ut-button", click: leave }, say("bay/all-steps")), make("p", {}, where)), bar),
    area,
    make("footer", { class: "ut-screen-foot" }, wrong, make("div", { class: "ut-screen-row" }, back, next))));

  function renew() { next.textContent = all[at].next(); }

  /* What is typed counts also for who leaves; what is wrong is then lost, and said nowhere. */
  function leave() {
    all[at].take();
    dialog.close();
  }

  function press(event) {
    if (event.detail > 1) return; // a finger that bounced
    wrong.textContent = all[at].take();
    if (!wrong.textContent) go(at + 1);
    else wrong.scrollIntoView({ block: "nearest" });
  }

  function key(event) {
    if (event.key !== "Enter" || !event.target.matches("input:not([type=file])")) return;
    event.preventDefault();
    press(event);
  }

  function go(to) {
    all = screens();
    wrong.textContent = "";
    if (to >= all.length) {
      dialog.close();
      return;
    }
    at = Math.max(0, to);
    where.textContent = say("bay/where", { step: at + 1, count: all.length });
    bar.max = all.length;
    bar.value = at + 1;
    area.replaceChildren(...all[at].show());
    back.hidden = at === 0;
    renew();
    area.scrollTop = 0;
    const heading = area.querySelector("h2");
    heading.tabIndex = -1;
    heading.focus({ preventScroll: true });
  }

  return {
    /**
     * Opens it in a place, at a screen.
     * @param {HTMLElement} home
     * @param {number} to
     */
    open(home, to) {
      home.append(dialog);
      dialog.showModal();
      go(to);
    },
  };
}
