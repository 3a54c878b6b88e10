/* A crossover of second order and a pad of two resistors, the same as `undertrim reckon crossover` and `reckon pad`. */

import { Refused, given, missing, number, said } from "./electrical-numbers.js";
import { neighbours } from "./electrical-sound.js";
import { list, say } from "./words.js";

/* The quality of a second order: the level at its corner. */
const QUALITY = { "butterworth": 1 / Math.sqrt(2), "linkwitz-riley": 0.5 };

function preferred(code, part) {
  const [below, above] = neighbours(part.value).map((one) => said(one, part.unit));
  return say(code, { below, above });
}

export function crossover(asked) {
  const quality = QUALITY[asked.alignment];
  if (!quality) throw new Refused("electrical/no-alignment", { typed: asked.alignment, known: list(Object.keys(QUALITY), "or") });
  const corner = given("frequency", asked.frequency);
  const ohms = given("load", asked.load);
  const turns = 2 * Math.PI * corner.value;
  const capacitor = number(say("electrical/capacitor"), quality / (turns * ohms.value), "F");
  const coil = number(say("electrical/coil"), ohms.value / (turns * quality), "H");
  const down = number(say("electrical/at-corner"), 20 * Math.log10(quality), "dB");
  const parts = { capacitor: capacitor.text, coil: coil.text };
  return {
    frequency: corner.value, capacitance: capacitor.value, inductance: coil.value,
    headline: say("electrical/crossover-at", { corner: corner.text, load: ohms.text, kind: say(`electrical/${asked.alignment}`), capacitor: capacitor.text, coil: coil.text }),
    numbers: [corner, ohms, capacitor, coil, down],
    notes: [
      say("electrical/crossover-ways", parts), preferred("electrical/preferred-capacitors", capacitor), preferred("electrical/preferred-coils", coil),
      say("electrical/second-order", { down: down.text }), say("electrical/load-changes"),
    ],
  };
}

function heat(name, part, power) { return missing(power) ? number(name, part, "share") : number(name, part * power, "W"); }

export function pad(asked) {
  const level = given("taken-off", asked.decibels);
  const ohms = given("load", asked.load);
  const watts = missing(asked.power) ? [] : [given("power", asked.power)];
  const kept = Math.pow(10, -level.value / 20);
  const series = number(say("electrical/in-series"), ohms.value * (1 - kept), "ohm");
  const across = number(say("electrical/across"), ohms.value * kept / (1 - kept), "ohm");
  const parts = [1 - kept, kept * (1 - kept)];
  const heats = [heat(say("electrical/series-heat"), parts[0], asked.power), heat(say("electrical/across-heat"), parts[1], asked.power)];
  return {
    series: series.value, across: across.value, heat: parts,
    headline: say("electrical/pad", { level: level.text, load: ohms.text, series: series.text, across: across.text }),
    numbers: [level, ohms, ...watts, series, across, ...heats],
    notes: [
      say("electrical/pad-heat", { series: heats[0].text, across: heats[1].text }),
      preferred("electrical/preferred-series", series), preferred("electrical/preferred-across", across), say("electrical/pad-place"),
    ],
  };
}
