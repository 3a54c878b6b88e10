/* What cables carry, and fuses. */

import { Refused, SLACK, number, said, tables } from "./electrical-numbers.js";

function column(around) {
  const columns = tables.ampacity.insulation;
  const found = columns.indexOf(around.insulation);
  if (found < 0) throw new Refused("no table for insulation of '" + around.insulation + "' °C", "write one of " + columns.join(", ") + ", or the next lower");
  if (["cabin", "engine"].indexOf(around.place) < 0) throw new Refused("no place '" + around.place + "' for a cable", "write one of cabin, engine");
  return found;
}

export function engineFactor(around) {
  const found = column(around);
  return around.place === "engine" ? tables.ampacity.engine.factors[found] : 1;
}

export function ampacity(conductor, around) {
  const found = column(around);
  if (!conductor.gauge) return null;
  return tables.ampacity.gauges[conductor.gauge][found] * engineFactor(around) / Math.sqrt(around.times);
}

export function remembered(around) {
  return around.place === "engine" && tables.ampacity.engine.sure.indexOf(around.insulation) < 0;
}

export function ampacityNotes(conductor, around) {
  const words = ["the currents are from 33 CFR 183.425, Table 5, written for boats: a reference, not the law for cars"];
  if (conductor.scheme === "metric") words.push("that table has no metric sizes: taken as " + conductor.gauge + " AWG, the next with less copper");
  if (conductor.scheme === "sae") words.push("that table names gauges: the same numbers are used beside SAE areas (secondary marine tables)");
  if (around.times !== 1) words.push("that table is for copper: scaled down until the same heat arises (derived)");
  if (remembered(around)) words.push("the factor for the engine space is from memory for this insulation");
  if (conductor.gauge === "18") words.push("boats may have 18 AWG only inside a sheath, and 16 AWG at least as a single wire (33 CFR 183.425)");
  return words.concat(["cables in a bundle carry less, which is not computed here"]);
}

function fuses() {
  const rows = {};
  tables.fuses.families.forEach((family) => { rows[family.id] = family.ratings; });
  return tables.fuses.families.map((family) => rows[family.same || family.id]
    .filter((row) => row.amps >= (family.least || 0) && row.amps <= (family.most || Infinity))
    .map((row) => ({ family: family.id, name: family.name, amps: row.amps, colour: row.colour, sure: family.sure }))).flat();
}

export function readings(asked) {
  const found = fuses().filter((fuse) => fuse.colour && fuse.colour === asked.colour);
  if (!found.length) {
    const known = fuses().map((fuse) => fuse.colour).filter((colour, place, every) => colour && every.indexOf(colour) === place);
    throw new Refused("no fuse is '" + asked.colour + "'", "colours: " + known.join(", "));
  }
  return {
    fuses: found,
    headline: asked.colour + ": " + found.map((fuse) => fuse.name + " " + said(fuse.amps, "A")).join("; "),
    numbers: found.map((fuse) => number(fuse.name, fuse.amps, "A", "DIN 72581, ISO 8820-3 (secondary)")),
    notes: ["the number on the fuse comes before its colour"],
  };
}

export function nextFuse(current, share) {
  const enough = fuses().map((fuse) => fuse.amps).filter((amps) => amps >= current / share * (1 - SLACK));
  return enough.length ? Math.min(...enough) : null;
}

export function described(amps) {
  return fuses().filter((fuse) => fuse.amps === amps).map((fuse) => fuse.colour ? fuse.name + " (" + fuse.colour + ")" : fuse.name).join(" or ") || "in no family listed here";
}

export function fuseNotes(amps) {
  const words = ["put the fuse at the source, within " + said(tables.fuses.place.within, "m") + " of it along the cable (common practice), before anything else"];
  const found = fuses().filter((fuse) => fuse.amps === amps);
  if (found.length && !found.some((fuse) => fuse.sure)) words.push("ratings of bolt-in strips are from memory: what their maker lists comes first");
  return words;
}
