/* What a wire may be besides the functions of a radio, and which button a resistance is. */

import { inside, isLive, weigh } from "./meter-functions.js";
import { has } from "./meter-readings.js";

/** @import { MeterTable } from "published" */

/* `recorded` is what consider() made of the record's function, null for an unknown wire. */
/** @param {MeterTable} table */
export function suspicions(table, readings, recorded) {
  return Object.keys(table.suspect).map((id) => {
    const row = table.suspect[id];
    const texts = readings.filter((reading, index) => brings(table, row, reading) && holds(table, row, readings, recorded, index)).map((reading) => reading.text);
    return { id, words: row.words, do: row.do, stop: Boolean(row.stop), readings: texts };
  }).filter((one) => one.readings.length);
}

/** @param {MeterTable} table */
function brings(table, row, reading) {
  const stated = !row.states || has(row.states, reading.state);
  return stated && (row.reads[reading.kind] || []).some((id) => {
    const band = table.band[id];
    return inside(reading, { low: band.low, high: "high" in band ? band.high : Infinity });
  });
}

/** @param {MeterTable} table */
function holds(table, row, readings, recorded, index) {
  if (row.dead && readings.some((reading) => isLive(table, reading))) return false;
  if (row.where === "instead") return Boolean(recorded) && instead(table, row, recorded, recorded.findings[index]);
  if (row.where === "unrecorded") return !recorded;
  if (row.where === "lone") {
    return !(recorded && recorded.standing === "agrees") && weigh(table, readings)[0].standing === "disagrees";
  }
  return !recorded || recorded.findings[index].verdict !== "agrees";
}

/** @param {MeterTable} table */
function instead(table, row, recorded, finding) {
  const concerned = !row.groups || has(row.groups, table.function[recorded.function].group);
  return concerned && finding.verdict === "disagrees" && Boolean(finding.band) && has(row.expects, finding.band.id);
}

export function place(rungs, ohms) {
  function high(rung) { return rung.high === null ? Infinity : rung.high; }
  const holding = rungs.filter((rung) => rung.low <= ohms && ohms <= high(rung));
  if (holding.length) {
    const kind = holding.length > 1 ? "ambiguous" : holding[0].idle ? "idle" : "button";
    return { kind, rungs: holding, below: null, above: null };
  }
  const below = rungs.filter((rung) => high(rung) < ohms);
  const above = rungs.filter((rung) => rung.low > ohms);
  return {
    kind: "none", rungs: [],
    below: below.reduce((best, rung) => !best || high(rung) > high(best) ? rung : best, null),
    above: above.reduce((best, rung) => !best || rung.low < best.low ? rung : best, null)
  };
}
