/* The clock of a wait: it counts from a moment that is kept, and so goes on while the phone sleeps or the page is closed. */

import { clockFace } from "./clock-face.js";
import { kept, keep } from "./visit-kept.js";
import { say } from "./words.js";

/** @import { Step } from "./page-data.js" */

/**
 * When a wait began: when the step before it was done, or when its clock was started again after that. Who only looks ahead starts none,
 * or the time would run while the battery is still joined.
 * @param {Step} step
 * @param {Step | null} before
 * @returns {number | null}
 */
export function began(step, before) {
  const done = before && kept().done[before.id];
  return before && !done ? null : Math.max(done || 0, kept().waits[step.id] || 0) || null;
}

/**
 * Seconds since a wait began, and how many are left: none where nobody knows how long it is.
 * @param {Step} step
 * @param {Step | null} before
 */
export function waited(step, before, now = Date.now()) {
  const passed = Math.max(0, (now - (began(step, before) || now)) / 1000);
  return { passed, left: step.wait.seconds === null ? 0 : Math.max(0, step.wait.seconds - passed) };
}

export function beginAgain(step) { keep((one) => { one.waits[step.id] = Date.now(); }); }

/**
 * @param {Step} step
 * @param {Step | null} before
 */
export function waitWords(step, before) {
  if (before && !began(step, before)) return say("bay/wait-not-begun");
  const { passed, left } = waited(step, before);
  if (step.wait.seconds === null) return say("bay/waited-unknown", { passed: clockFace(passed) });
  return left ? say("bay/wait-left", { left: clockFace(Math.ceil(left)) }) : say("bay/wait-over", { passed: clockFace(passed) });
}
