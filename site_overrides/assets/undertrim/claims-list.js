/* The claims on this device, and the ways in which they leave it: as a file, by what the device shares with, or in words for the repository of the records. */

import { asFile, claims, drop, dropAll } from "./claims.js";
import { make } from "./elements.js";
import { save } from "./visit-passed.js";
import { say } from "./words.js";

/** @import { Claim } from "./claims.js" */

const NAME = "undertrim-claims.json", JSON_TYPE = "application/json";
/* So long an address every forge and browser takes. Ours. */
const LONGEST = 6000;

/** @param {Claim} claim */
function value(claim) { return claim.says || say(`not-so/found-${claim.found}`); }

/** @param {Claim} claim */
function words(claim) {
  return say("not-so/said", { about: claim.about, value: value(claim), stood: claim.was || say("facts/not-recorded") });
}

/** @param {Claim} claim */
function carOf(claim) {
  const { year, side, is } = claim.car;
  return [typeof year === "number" ? String(year) : "", side === "unknown" ? "" : say(`not-so/side-${side}`), Object.entries(is || {}).map((pair) => pair.join(": ")).join(", ")];
}

/** @param {Claim} claim */
function how(claim) {
  return [say(`not-so/how-${claim.how}`), claim.on, claim.by, claim.with, ...carOf(claim), claim.note].filter(Boolean).join("; ");
}

/* What an issue of the repository says. */
function issue() {
  const all = claims(), told = all.map((one) => `- ${one.vehicle}: ${words(one)} (${how(one)})`).join("\n");
  return { title: say("not-so/issue-title", { vehicle: Array.from(new Set(all.map((one) => one.vehicle))).join(", ") }), body: `${told}\n\n\`\`\`json\n${asFile()}\`\`\`\n` };
}

/* Where a new issue is written; empty where the collection names no repository, or it would be too long. */
function issueAddress() {
  const named = document.querySelector("meta[name=undertrim-repository]");
  if (!(named instanceof HTMLMetaElement)) return "";
  const address = `${named.content.replace(/\/$/, "")}/issues/new?${new URLSearchParams(issue())}`;
  return address.length > LONGEST ? "" : address;
}

async function share() {
  await navigator.share({ files: [new File([asFile()], NAME, { type: JSON_TYPE })] }).catch(() => { /* thought better of */ });
}

function canShare() { return "canShare" in navigator && navigator.canShare({ files: [new File(["{}"], NAME, { type: JSON_TYPE })] }); }

function press(words, click) { return make("button", { type: "button", class: "ut-button", click }, words); }

function ways() {
  const said = make("span", { role: "status" }), address = issueAddress();
  const copy = () => { navigator.clipboard.writeText(issue().body).then(() => { said.textContent = say("not-so/copied"); }, () => { said.textContent = say("not-so/not-copied"); }); };
  return make("p", { class: "ut-report-do" },
    press(say("not-so/save"), () => { save(NAME, JSON_TYPE, asFile()); }),
    canShare() ? press(say("bay/share"), share) : null,
    address ? make("a", { class: "ut-button", href: address, rel: "noreferrer", target: "_blank" }, say("not-so/issue")) : null,
    press(say("not-so/copy"), copy), press(say("not-so/drop-all"), dropAll), said);
}

/**
 * Shows them in a place, and again whenever they change.
 * @param {HTMLElement} spot
 */
export function showClaims(spot) {
  const fill = () => {
    const all = claims();
    spot.replaceChildren(...all.length ? [make("h2", {}, say("not-so/kept", { count: all.length })), make("p", {}, say("not-so/kept-how")),
      make("ul", { class: "ut-kept" }, ...all.map((one, place) => make("li", {}, make("span", {}, make("b", {}, words(one)), " ", make("small", {}, how(one))), press(say("not-so/drop"), () => { drop(place); })))),
      ways()] : []);
  };
  document.addEventListener("ut-claims", fill);
  fill();
}
