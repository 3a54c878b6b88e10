/* What several checks come to, and which way is the best, as `derive/fit/verdict.py` has it. */

import { list, say } from "./words.js";

export const KINDS = ["fits", "fits-with", "marginal", "unknown", "does-not-fit"];
const RANKED = ["fits", "fits-with", "marginal", "unknown", "stop", "does-not-fit"];
const WORST = ["fails", "unknown", "marginal", "fits"];

export function smallest(checks) {
  const room = checks.filter((one) => one.margin !== null && one.unit === "mm" && one.name.indexOf("bolts") < 0)
    .map((one) => one.margin);
  return room.length ? Math.min(...room) : -Infinity;
}

export function less(one, other) {
  for (let i = 0; i < one.length; i += 1) if (one[i] !== other[i]) return one[i] < other[i];
  return false;
}

export function decide(checks, parts, toGet, notes) {
  const verdicts = checks.map((one) => one.verdict);
  const has = (verdict) => verdicts.indexOf(verdict) >= 0;
  const kind = has("fails") ? "does-not-fit" : has("unknown") ? "unknown" : has("marginal") ? "marginal" : parts.length + toGet.length ? "fits-with" : "fits";
  const order = (one) => [WORST.indexOf(one.verdict), one.mend ? 1 : 0, one.margin === null ? Infinity : one.margin];
  const ordered = checks.slice().sort((a, b) => less(order(a), order(b)) ? -1 : less(order(b), order(a)) ? 1 : 0);
  const fit = { kind, headline: "", parts, to_get: toGet, notes, checks: ordered, plate: false };
  const between = betweenWords(fit), holds = kind === "fits" || kind === "fits-with", why = list(reasons(fit), "semicolon");
  fit.reason = holds ? between : between ? say("fit/with", { between, why }) : why;
  fit.headline = say(`fit/${holds ? "fits" : kind}${between ? "-with" : ""}`, { between, why });
  return fit;
}

/* The answer for gear that goes in while something is lost with the factory unit that is not the owner's to give up; `bySize` where the joint is not known. */
export function stopped(fit, why, bySize = false) {
  if (!why.length || fit.kind === "does-not-fit") return fit;
  const told = { stops: list(why, "semicolon"), bare: fit.headline };
  const reason = bySize ? say("fit/stops-by-size", told) : say("fit/stops", told);
  return { ...fit, kind: "stop", reason, headline: say("fit/check", { title: say("verdicts/stop"), found: reason }) };
}

/* What goes between, in words; empty where nothing does. */
function betweenWords(fit) {
  if (!fit.to_get.length) return list(fit.parts);
  if (!fit.parts.length) return say("fit/to-get", { what: list(fit.to_get) });
  return say("fit/parts-and-to-get", { parts: list(fit.parts), what: list(fit.to_get) });
}

function reasons(fit) {
  const said = fit.checks.filter((one) => one.verdict === fit.checks[0].verdict);
  return (fit.kind === "does-not-fit" ? said.slice(0, 1) : said).map((one) => one.words);
}

export function best(fits) {
  const order = (fit) => {
    const kind = KINDS.indexOf(fit.kind), lacking = fit.to_get.length ? 1 : 0;
    if (fit.kind === "does-not-fit") return [kind, 0, 0, 0];
    return [Math.max(kind, lacking ? KINDS.indexOf("marginal") : 0), lacking, fit.parts.length, -smallest(fit.checks)];
  };
  return fits.reduce((found, fit) => less(order(fit), order(found)) ? fit : found);
}

/* An answer with more checks, and what else goes between. */
export function together(fit, checks, parts = [], toGet = []) { return Object.assign(decide(fit.checks.concat(checks), fit.parts.concat(parts), fit.to_get.concat(toGet), fit.notes), { plate: fit.plate }); }

/* Where an answer stands among others: by kind, from stock before to buy, by how little a plate must bridge, by the smallest margin, by name. */
export function rank(fit, name) {
  const gaps = fit.to_get.length ? fit.checks.filter((one) => one.margin !== null && one.name.startsWith("hole")).map((one) => one.margin) : [];
  return [RANKED.indexOf(fit.kind), fit.to_get.length ? 1 : 0, gaps.length ? Math.max(...gaps) : 0, -smallest(fit.checks), name];
}

/* The verdict in a word or two, with what must be got apart from what is there. */
export function verdictWords(fit) { return fit.kind === "fits-with" && fit.to_get.length ? say("verdicts/to-get") : say(`verdicts/${fit.kind}`); }
