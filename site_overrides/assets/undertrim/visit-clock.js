/* The clock of a wait: it counts from a moment that is kept, and so goes on while the phone sleeps or the page is closed. */

import { clockFace } from "./clock-face.js";
import { kept, keep } from "./visit-kept.js";
import { say } from "./words.js";

/** @import { Step } from "./page-data.js" */

/**
 * Seconds since a wait began, and how many are left: none where nobody knows how long it is.
 * @param {Step} step
 */
export function waited(step, now = Date.now()) {
  const passed = Math.max(0, (now - (kept().waits[step.id] || now)) / 1000);
  return { passed, left: step.wait.seconds === null ? 0 : Math.max(0, step.wait.seconds - passed) };
}

export function beginWait(step, again = false) {
  if (again || !kept().waits[step.id]) keep((one) => { one.waits[step.id] = Date.now(); });
}

export function waitWords(step) {
  const { passed, left } = waited(step);
  if (step.wait.seconds === null) return say("bay/waited-unknown", { passed: clockFace(passed) });
  return left ? say("bay/wait-left", { left: clockFace(Math.ceil(left)) }) : say("bay/wait-over", { passed: clockFace(passed) });
}
