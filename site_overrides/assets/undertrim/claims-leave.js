/* How a claims file leaves the device: saved, by what the device shares with, or as a new file of the repository of the records. */

import { make } from "./elements.js";
import { TYPE } from "./photos-kept.js";
import { save } from "./visit-passed.js";
import { say } from "./words.js";

/** @typedef {{ name: string, text: () => string, photos: () => Promise<File[]> }} Leaving a claims file, and the photographs that it names */

const JSON_TYPE = "application/json";
/* So long an address every forge and browser takes. Ours. */
export const LONGEST = 6000;

export function press(words, click) { return make("button", { type: "button", class: "ut-button", click }, words); }

/** A way to another host, which nobody goes without pressing it. @param {string} address @param {string} words */
export function leading(address, words) { return address ? make("a", { class: "ut-button", href: address, rel: "noreferrer", target: "_blank" }, words) : null; }

/**
 * Where a new file of the repository is begun, with the text in it; empty where the collection names no such place, or it would be too long.
 * @param {string} name
 * @param {string} text
 */
export function newFileAddress(name, text) {
  const named = document.querySelector("meta[name=undertrim-new-file]");
  if (!(named instanceof HTMLMetaElement)) return "";
  const address = named.content.replace("{name}", encodeURIComponent(name)).replace("{text}", () => encodeURIComponent(text));
  return address.length > LONGEST ? "" : address;
}

/* How a claims file may be called where it is shared: some browsers hand on no JSON, and 'undertrim take' reads it under either name. */
const NAMED = [{ type: JSON_TYPE, ending: "" }, { type: "text/plain", ending: ".txt" }];

/* What the device hands on a claims file and photographs as; nothing where it shares no such files. */
function shared() {
  const takes = ({ type, ending }) => navigator.canShare({ files: [new File(["{}"], "claims.json" + ending, { type }), new File([""], "photo.jpg", { type: TYPE })] });
  return "canShare" in navigator ? NAMED.find(takes) : undefined;
}

/** @param {Leaving} leaving @param {{ type: string, ending: string }} how */
async function share(leaving, { type, ending }) {
  const files = [new File([leaving.text()], leaving.name + ending, { type }), ...await leaving.photos()];
  await navigator.share({ files }).catch((error) => { if (error.name !== "AbortError") saveAll(leaving); }); // thought better of, or refused
}

/* The claims, and beside them the photographs that they name: 'undertrim take' looks for these in the same folder. @param {Leaving} leaving */
async function saveAll(leaving) {
  save(leaving.name, JSON_TYPE, leaving.text());
  (await leaving.photos()).forEach((file) => { save(file.name, TYPE, file); });
}

/**
 * The buttons for them, before others.
 * @param {Leaving} leaving
 * @param {...(Node | null)} others
 */
export function ways(leaving, ...others) {
  const how = shared();
  return make("p", { class: "ut-report-do" }, press(say("not-so/save"), () => { saveAll(leaving); }), how ? press(say("bay/share"), () => { share(leaving, how); }) : null, ...others);
}
