/* The claims on this device, and the ways in which they leave it: as a file, by what the device shares with, or in words for the repository of the records. */

import { asFile, claims, drop, dropAll } from "./claims.js";
import { make } from "./elements.js";
import { leading, LONGEST, newFileAddress, press, ways } from "./claims-leave.js";
import { photoFiles } from "./photos-kept.js";
import { say } from "./words.js";

/** @import { Claim } from "./claims.js" */

const NAME = "undertrim-claims.json";

/** @param {Claim} claim */
function value(claim) { return claim.says || say(`not-so/found-${claim.found}`); }

/** @param {Claim} claim */
function recordOf(claim) { return claim.gear || claim.vehicle; }

/** @param {Claim} claim */
function words(claim) {
  const [, , make, model, opening] = claim.about.startsWith("gear/tried/") ? claim.about.split("/") : [];
  if (opening) return say(`tried-form/said-${claim.says}`, { gear: claim.gear, opening: `${make}/${model}/${opening}` });
  return say("not-so/said", { about: claim.gear ? `${claim.gear}/${claim.about}` : claim.about, value: value(claim), stood: claim.was || say("facts/not-recorded") });
}

/** @param {Claim} claim */
function carOf(claim) {
  const { year, side, is } = claim.car || { year: "unknown", side: "unknown" };
  return [typeof year === "number" ? String(year) : "", side === "unknown" ? "" : say(`not-so/side-${side}`), Object.entries(is || {}).map((pair) => pair.join(": ")).join(", ")];
}

/** @param {Claim} claim */
function how(claim) {
  return [say(`not-so/how-${claim.how}`), claim.on, claim.by, claim.with, ...carOf(claim), claim.size && say(`tried-form/size-${claim.size}`), claim.hit, claim.note, claim.photo && claim.photo.file].filter(Boolean).join("; ");
}

/* What an issue of the repository says. */
function issue() {
  const all = claims(), told = all.map((one) => `- ${recordOf(one)}: ${words(one)} (${how(one)})`).join("\n");
  return { title: say("not-so/issue-title", { vehicle: Array.from(new Set(all.map(recordOf))).join(", ") }), body: `${told}\n\n\`\`\`json\n${asFile()}\`\`\`\n` };
}

/* Where a new issue is written; empty where the collection names no repository, or it would be too long. */
function issueAddress() {
  const named = document.querySelector("meta[name=undertrim-repository]");
  if (!(named instanceof HTMLMetaElement)) return "";
  const address = `${named.content.replace(/\/$/, "")}/issues/new?${new URLSearchParams(issue())}`;
  return address.length > LONGEST ? "" : address;
}

/* The claims as a new file of the repository; not where photographs go with them. */
function fileAddress() {
  const all = claims();
  return all.some((one) => one.photo) ? "" : newFileAddress(`claims-${Array.from(new Set(all.map((one) => recordOf(one).split("/").pop()))).join("-")}-${all[0].on}.json`, asFile());
}

function shown() {
  const said = make("span", { role: "status" });
  const copy = () => { navigator.clipboard.writeText(issue().body).then(() => { said.textContent = say("not-so/copied"); }, () => { said.textContent = say("not-so/not-copied"); }); };
  return ways({ name: NAME, text: asFile, photos: photoFiles }, leading(fileAddress(), say("not-so/new-file")), leading(issueAddress(), say("not-so/issue")),
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
      shown()] : []);
  };
  document.addEventListener("ut-claims", fill);
  fill();
}
