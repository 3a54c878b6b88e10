/* Loads of speakers, filters, levels and delays, the same as `undertrim load` and `reckon`; and a battery at rest. */

import { Refused, SLACK, given, number, orUsual, said, tables, usual } from "./electrical-numbers.js";

const HINT = "write ohms with + for series, | for parallel and brackets: '4+4 | 4+4'";
const LONGEST = 200;
const DEEPEST = 20;

function series(loads) { return loads.reduce((sum, one) => sum + one, 0); }

function parallel(loads) { return 1 / loads.reduce((sum, one) => sum + 1 / one, 0); }

function load(total, speakers, how, least) {
  const allowed = orUsual("load", least, "least_load", "least load");
  const found = number("load", total, "ohm");
  const notes = [];
  if (total < allowed.value * (1 - SLACK)) {
    const common = allowed.origin === "usual" ? " that outputs usually allow (common practice)" : " that the output allows";
    notes.push(found.text + " is below the " + allowed.text + common + ": the amplifier may overheat or shut down");
  }
  notes.push("nominal ohms are not what a meter reads: a 4 ohm speaker shows about 3.2 to 3.6 ohm (common practice)");
  return {
    ohms: total, count: speakers.length,
    headline: speakers.length + " speaker" + (speakers.length > 1 ? "s" : "") + ", " + how + ": " + found.text,
    numbers: speakers.concat([allowed, found]), notes,
  };
}

export function wired(asked) {
  if (!asked.ohms.length) throw new Refused("no speaker is given", HINT);
  const speakers = asked.ohms.map((one, place) => given("load", one, "speaker " + (place + 1)));
  return load((asked.how === "parallel" ? parallel : series)(asked.ohms), speakers, asked.how, asked.least);
}

function tokens(text) {
  if (text.length > LONGEST) throw new Refused("the arrangement is too long", "write at most " + LONGEST + " characters");
  const token = / *([0-9]{1,6}(?:\.[0-9]{1,6})?|[+|()]) */y;
  const found = [];
  for (let place = 0; place < text.length; place = token.lastIndex) {
    token.lastIndex = place;
    const match = token.exec(text);
    if (!match) throw new Refused("'" + String.fromCodePoint(text.codePointAt(place)) + "' cannot be read in '" + text + "'", HINT);
    found.push(match[1]);
  }
  return found;
}

/* Reads tokens by descent: parallel branches of series of speakers or brackets. */
export function arranged(asked) {
  const left = tokens(asked.text);
  let depth = 0;
  const speakers = [];

  function takes(token) {
    if (left[0] !== token) return false;
    left.shift();
    return true;
  }
  function branches() {
    const found = [chain()];
    while (takes("|")) found.push(chain());
    return found.length > 1 ? parallel(found) : found[0];
  }
  function chain() {
    const found = [one()];
    while (takes("+")) found.push(one());
    return series(found);
  }
  function bracket() {
    depth += 1;
    if (depth > DEEPEST) throw new Refused("the brackets are too deep", HINT);
    const total = branches();
    if (!takes(")")) throw new Refused("a bracket is not closed", HINT);
    depth -= 1;
    return total;
  }
  function one() {
    if (takes("(")) return bracket();
    if (!/^[0-9]/.test(left[0] || "")) throw new Refused("a speaker is missing " + (left.length ? "before '" + left[0] + "'" : "at the end"), HINT);
    const ohms = Number(left.shift());
    speakers.push(given("load", ohms, "speaker " + (speakers.length + 1)));
    return ohms;
  }

  const total = branches();
  if (left.length) throw new Refused("'" + left[0] + "' stands where it cannot", HINT);
  return load(total, speakers, asked.text.split(/\s+/).filter(Boolean).join(" "), asked.least);
}

const FILTER_NOTES = [
  "first order: 6 dB an octave, 3 dB down at this frequency into a load that does not change with frequency",
  "a real speaker's load does change, so that the true corner lies elsewhere: listen, or measure",
];

function capacitorFor(frequency, ohms) { return 1 / (2 * Math.PI * frequency * ohms); }

function neighbours(value) {
  const power = Math.floor(Math.log10(value));
  const values = [];
  [power - 1, power, power + 1].forEach((decade) => {
    tables.defaults.series.e12.forEach((step) => { values.push(step * Math.pow(10, decade)); });
  });
  const place = values.findIndex((one) => one > value * (1 + SLACK));
  return [values[place - 1], values[place]];
}

export function filterAt(asked) {
  const corner = given("frequency", asked.frequency);
  const ohms = given("load", asked.load);
  const capacitor = number("capacitor", capacitorFor(corner.value, ohms.value), "F");
  const coil = number("coil", ohms.value / (2 * Math.PI * corner.value), "H");
  const preferred = neighbours(capacitor.value).map((one) => said(one, "F") + " gives " + said(capacitorFor(ohms.value, one), "Hz"));
  return {
    frequency: corner.value, capacitance: capacitor.value, inductance: coil.value,
    headline: corner.text + " at " + ohms.text + ": " + capacitor.text + " in series for a high-pass, " + coil.text + " in series for a low-pass",
    numbers: [corner, ohms, capacitor, coil], notes: ["next preferred values: " + preferred.join(", ")].concat(FILTER_NOTES),
  };
}

export function filterOfCapacitor(asked) {
  const capacitor = given("capacitance", asked.capacitance);
  const ohms = given("load", asked.load);
  const corner = number("frequency", 1 / (2 * Math.PI * ohms.value * capacitor.value), "Hz");
  return {
    frequency: corner.value, capacitance: capacitor.value, inductance: null,
    headline: capacitor.text + " in series with " + ohms.text + ": a high-pass at " + corner.text,
    numbers: [capacitor, ohms, corner], notes: FILTER_NOTES,
  };
}

export function filterOfCoil(asked) {
  const coil = given("inductance", asked.inductance);
  const ohms = given("load", asked.load);
  const corner = number("frequency", ohms.value / (2 * Math.PI * coil.value), "Hz");
  return {
    frequency: corner.value, capacitance: null, inductance: coil.value,
    headline: coil.text + " in series with " + ohms.text + ": a low-pass at " + corner.text,
    numbers: [coil, ohms, corner], notes: FILTER_NOTES,
  };
}

export function gain(asked) {
  const watts = given("power", asked.power);
  const ohms = given("load", asked.load);
  const volts = number("output voltage", Math.sqrt(watts.value * ohms.value), "V");
  return {
    volts: volts.value, headline: watts.text + " into " + ohms.text + ": " + volts.text + " RMS", numbers: [watts, ohms, volts],
    notes: [
      "set with a steady sine at full level, tone controls flat, speakers taken off (common practice)",
      "for music below full level turn up no further: a signal that clips harms speakers at any voltage",
    ],
  };
}

function level(decibels, voltage, power, before) {
  const numbers = [decibels, number("voltage", voltage, "times"), number("power", power, "times")];
  return {
    decibels: decibels.value, voltage, power,
    headline: decibels.text + ": voltage " + numbers[1].text + ", power " + numbers[2].text,
    numbers: before.concat(numbers), notes: [],
  };
}

export function change(asked) {
  const decibels = given("level", asked.decibels);
  return level(decibels, Math.pow(10, decibels.value / 20), Math.pow(10, decibels.value / 10), []);
}

export function ratio(asked) {
  const one = given("signal", asked.voltage, "voltage");
  const other = given("signal", asked.against, "voltage to compare with");
  const times = one.value / other.value;
  return level(number("level", 20 * Math.log10(times), "dB"), times, times * times, [one, other]);
}

function speedOfSound(celsius) {
  const sound = tables.defaults.sound;
  return sound.speed * Math.sqrt((celsius + 273.15) / (sound.at + 273.15));
}

export function delays(asked) {
  const count = asked.distances.length;
  if (count < 2 || count > 32) throw new Refused(count + " distances make no delay", "give from 2 to 32, one for each speaker");
  const ways = asked.distances.map((one, place) => given("distance", one, "distance " + (place + 1)));
  const air = orUsual("air", asked.air, "air");
  const speed = speedOfSound(air.value);
  const far = Math.max(...asked.distances);
  const waits = asked.distances.map((one, place) => number("delay " + (place + 1), (far - one) / speed, "s"));
  return {
    seconds: waits.map((wait) => wait.value), speed,
    headline: "delays: " + waits.map((wait) => wait.text).join(", "),
    numbers: ways.concat([air, number("speed of sound", speed, "m/s", "ISO 9613-1 (secondary)")], waits),
    notes: ["measure from the middle of each cone to where the head is; the ear has the last word (common practice)"],
  };
}

export function rest(asked) {
  const battery = given("capacity", asked.capacity);
  const drawn = given("rest", asked.current);
  const part = orUsual("share", asked.share, "rest_share", "share of the capacity");
  const days = number("time", battery.value * part.value / drawn.value / 24, "days");
  const notes = ["read the current after all modules sleep: 20 to 60 min (common practice)"];
  if (drawn.value > usual("rest_limit") * (1 + SLACK)) {
    notes.push("more than the usual " + said(usual("rest_limit"), "A") + " (common practice; some cars draw more by design): look for what stays awake");
  }
  return {
    days: days.value, headline: days.text + " until " + part.text + " of " + battery.text + " is gone at " + drawn.text,
    numbers: [battery, drawn, part, days], notes,
  };
}
