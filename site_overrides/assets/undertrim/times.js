/* Times in words, as `publish/facts/words.py` has them. */

import { list, say } from "./words.js";

/** @param {number} value minutes */
export function minutes(value) {
  const seconds = Math.floor(value * 60 + 0.5);
  const parts = { hours: Math.floor(seconds / 3600), minutes: Math.floor(seconds / 60) % 60, seconds: seconds % 60 };
  const said = Object.keys(parts).filter((unit) => parts[unit]).map((unit) => say(`times/${unit}`, { number: parts[unit] }));
  return list(said, "spaced") || say("times/seconds", { number: 0 });
}
