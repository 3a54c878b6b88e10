/* The claims on this device, and the ways in which they leave it: as a file, by what the device shares with, or in words for the repository of the records. */

import { asFile, claims, drop, dropAll } from "./claims.js";
import { make } from "./elements.js";
import { photoFiles, TYPE } from "./photos-kept.js";
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
  return [say(`not-so/how-${claim.how}`), claim.on, claim.by, claim.with, ...carOf(claim), claim.note, claim.photo && claim.photo.file].filter(Boolean).join("; ");
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

/* Where a new file of the repository is begun, with the claims in it; empty where the collection names no such place, it would be too long, or photographs go with them. */
function fileAddress() {
  const named = document.querySelector("meta[name=undertrim-new-file]"), all = claims();
  if (!(named instanceof HTMLMetaElement) || all.some((one) => one.photo)) return "";
  const name = `claims-${Array.from(new Set(all.map((one) => one.vehicle.split("/")[1]))).join("-")}-${all[0].on}.json`;
  const address = named.content.replace("{name}", encodeURIComponent(name)).replace("{text}", () => encodeURIComponent(asFile()));
  return address.length > LONGEST ? "" : address;
}

async function share() {
  await navigator.share({ files: [new File([asFile()], NAME, { type: JSON_TYPE }), ...await photoFiles()] }).catch(() => { /* thought better of */ });
}

function canShare() { return "canShare" in navigator && navigator.canShare({ files: [new File(["{}"], NAME, { type: JSON_TYPE }), new File([""], "photo.jpg", { type: TYPE })] }); }

/* The claims, and beside them the photographs that they name: 'undertrim take' looks for these in the same folder. */
async function saveAll() {
  save(NAME, JSON_TYPE, asFile());
  (await photoFiles()).forEach((file) => { save(file.name, TYPE, file); });
}

function press(words, click) { return make("button", { type: "button", class: "ut-button", click }, words); }

function ways() {
  const said = make("span", { role: "status" });
  const leading = (address, words) => address ? make("a", { class: "ut-button", href: address, rel: "noreferrer", target: "_blank" }, words) : null;
  const copy = () => { navigator.clipboard.writeText(issue().body).then(() => { said.textContent = say("not-so/copied"); }, () => { said.textContent = say("not-so/not-copied"); }); };
  return make("p", { class: "ut-report-do" },
    press(say("not-so/save"), saveAll),
    canShare() ? press(say("bay/share"), share) : null,
    leading(fileAddress(), say("not-so/new-file")), leading(issueAddress(), say("not-so/issue")),
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
