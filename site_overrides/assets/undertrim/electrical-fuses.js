/* What cables carry, and fuses. */

import { Refused, SLACK, number, said, tables } from "./electrical-numbers.js";
import { list, say } from "./words.js";

const PLACES = ["cabin", "engine"];

function column(around) {
  const columns = tables.ampacity.insulation;
  const found = columns.indexOf(around.insulation);
  if (found < 0) throw new Refused("electrical/no-insulation", { insulation: around.insulation, known: list(columns.map(String), "comma") });
  if (PLACES.indexOf(around.place) < 0) throw new Refused("electrical/no-place", { place: around.place, known: list(PLACES, "comma") });
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
  const words = [say("electrical/table-for-boats")];
  if (conductor.scheme === "metric") words.push(say("electrical/table-not-metric", { gauge: conductor.gauge }));
  if (conductor.scheme === "sae") words.push(say("electrical/table-of-gauges"));
  if (around.times !== 1) words.push(say("electrical/table-for-copper"));
  if (remembered(around)) words.push(say("electrical/engine-from-memory"));
  if (conductor.gauge === "18") words.push(say("electrical/thinnest-on-boats"));
  return words.concat([say("electrical/bundle-carries-less")]);
}

function fuses() {
  const families = tables.fuses.families;
  return Object.entries(families).map(([id, family]) => families[family.same || id].ratings
    .filter((row) => row.amps >= (family.least || 0) && row.amps <= (family.most || Infinity))
    .map((row) => ({ family: id, name: family.name, amps: row.amps, colour: row.colour, sure: family.sure }))).flat();
}

function colourWord(colour) { return say(`fuse-colours/${colour}`); }

export function readings(asked) {
  const found = fuses().filter((fuse) => fuse.colour && fuse.colour === asked.colour);
  if (!found.length) {
    const known = fuses().map((fuse) => fuse.colour).filter((colour, place, every) => colour && every.indexOf(colour) === place);
    throw new Refused("electrical/no-fuse-colour", { colour: asked.colour, known: list(known, "comma") });
  }
  const rated = found.map((fuse) => say("electrical/fuse-rated", { family: fuse.name, rating: said(fuse.amps, "A") }));
  return {
    fuses: found,
    headline: say("electrical/colour-means", { colour: colourWord(asked.colour), fuses: list(rated, "semicolon") }),
    numbers: found.map((fuse) => number(fuse.name, fuse.amps, "A", say("electrical/by-colour"))),
    notes: [say("electrical/number-before-colour")],
  };
}

export function nextFuse(current, share) {
  const enough = fuses().map((fuse) => fuse.amps).filter((amps) => amps >= current / share * (1 - SLACK));
  return enough.length ? Math.min(...enough) : null;
}

export function described(amps) {
  const found = fuses().filter((fuse) => fuse.amps === amps).map(coloured);
  return found.length ? list(found, "or") : say("electrical/in-no-family");
}

function coloured(fuse) {
  return fuse.colour ? say("electrical/fuse-coloured", { family: fuse.name, colour: colourWord(fuse.colour) }) : fuse.name;
}

export function fuseNotes(amps) {
  const words = [say("electrical/fuse-place", { within: said(tables.fuses.place.within, "m") })];
  const found = fuses().filter((fuse) => fuse.amps === amps);
  if (found.length && !found.some((fuse) => fuse.sure)) words.push(say("electrical/ratings-from-memory"));
  return words;
}
