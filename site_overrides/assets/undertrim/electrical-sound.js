/* Loads of speakers, filters, levels and delays, the same as `undertrim load` and `reckon`; and a battery at rest. */

import { Refused, SLACK, given, number, orUsual, said, tables, usual } from "./electrical-numbers.js";
import { list, say } from "./words.js";

/* Why an arrangement is refused, with how to write one. */
function misread(code, values = {}) { return new Refused(code, { ...values, hint: say("electrical/write-ohms") }); }

const LONGEST = 200;
const DEEPEST = 20;

function series(loads) { return loads.reduce((sum, one) => sum + one, 0); }

function parallel(loads) { return 1 / loads.reduce((sum, one) => sum + 1 / one, 0); }

function load(total, speakers, how, least) {
  const allowed = orUsual("load", least, "least_load", say("electrical/least-load"));
  const found = number(say("electrical/load"), total, "ohm");
  const notes = [];
  if (total < allowed.value * (1 - SLACK)) {
    const code = allowed.origin === "usual" ? "electrical/below-usual" : "electrical/below-least";
    notes.push(say(code, { load: found.text, least: allowed.text }));
  }
  notes.push(say("electrical/nominal-ohms"));
  return {
    ohms: total, count: speakers.length,
    headline: say("electrical/load-of", { count: speakers.length, how, load: found.text }),
    numbers: speakers.concat([allowed, found]), notes,
  };
}

function speaker(number) { return say("electrical/speaker", { number }); }

export function wired(asked) {
  if (!asked.ohms.length) throw misread("electrical/no-speaker");
  const speakers = asked.ohms.map((one, place) => given("load", one, speaker(place + 1)));
  return load((asked.how === "parallel" ? parallel : series)(asked.ohms), speakers, say(asked.how === "parallel" ? "electrical/parallel" : "electrical/series"), asked.least);
}

function tokens(text) {
  if (text.length > LONGEST) throw new Refused("electrical/too-long", { most: LONGEST });
  const token = / *([0-9]{1,6}(?:\.[0-9]{1,6})?|[+|()]) */y;
  const found = [];
  for (let place = 0; place < text.length; place = token.lastIndex) {
    token.lastIndex = place;
    const match = token.exec(text);
    if (!match) throw misread("electrical/not-read", { what: String.fromCodePoint(text.codePointAt(place)), text });
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
    if (depth > DEEPEST) throw misread("electrical/too-deep");
    const total = branches();
    if (!takes(")")) throw misread("electrical/not-closed");
    depth -= 1;
    return total;
  }
  function one() {
    if (takes("(")) return bracket();
    if (!left.length) throw misread("electrical/speaker-missing-last");
    if (!/^[0-9]/.test(left[0])) throw misread("electrical/speaker-missing", { before: left[0] });
    const ohms = Number(left.shift());
    speakers.push(given("load", ohms, speaker(speakers.length + 1)));
    return ohms;
  }

  const total = branches();
  if (left.length) throw misread("electrical/cannot-stand", { what: left[0] });
  return load(total, speakers, asked.text.split(/\s+/).filter(Boolean).join(" "), asked.least);
}

function filterNotes() { return [say("electrical/first-order"), say("electrical/load-changes")]; }

function capacitorFor(frequency, ohms) { return 1 / (2 * Math.PI * frequency * ohms); }

export function neighbours(value) {
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
  const capacitor = number(say("electrical/capacitor"), capacitorFor(corner.value, ohms.value), "F");
  const coil = number(say("electrical/coil"), ohms.value / (2 * Math.PI * corner.value), "H");
  const preferred = neighbours(capacitor.value).map((one) => say("electrical/capacitor-gives", { capacitor: said(one, "F"), corner: said(capacitorFor(ohms.value, one), "Hz") }));
  return {
    frequency: corner.value, capacitance: capacitor.value, inductance: coil.value,
    headline: say("electrical/filter-at", { corner: corner.text, load: ohms.text, capacitor: capacitor.text, coil: coil.text }),
    numbers: [corner, ohms, capacitor, coil], notes: [say("electrical/preferred-values", { below: preferred[0], above: preferred[1] })].concat(filterNotes()),
  };
}

export function filterOfCapacitor(asked) {
  const capacitor = given("capacitance", asked.capacitance);
  const ohms = given("load", asked.load);
  const corner = number(say("electrical/frequency"), 1 / (2 * Math.PI * ohms.value * capacitor.value), "Hz");
  return {
    frequency: corner.value, capacitance: capacitor.value, inductance: null,
    headline: say("electrical/high-pass", { capacitor: capacitor.text, load: ohms.text, corner: corner.text }),
    numbers: [capacitor, ohms, corner], notes: filterNotes(),
  };
}

export function filterOfCoil(asked) {
  const coil = given("inductance", asked.inductance);
  const ohms = given("load", asked.load);
  const corner = number(say("electrical/frequency"), ohms.value / (2 * Math.PI * coil.value), "Hz");
  return {
    frequency: corner.value, capacitance: null, inductance: coil.value,
    headline: say("electrical/low-pass", { coil: coil.text, load: ohms.text, corner: corner.text }),
    numbers: [coil, ohms, corner], notes: filterNotes(),
  };
}

export function gain(asked) {
  const watts = given("power", asked.power);
  const ohms = given("load", asked.load);
  const volts = number(say("electrical/output-voltage"), Math.sqrt(watts.value * ohms.value), "V");
  return {
    volts: volts.value, headline: say("electrical/gain", { power: watts.text, load: ohms.text, voltage: volts.text }), numbers: [watts, ohms, volts],
    notes: [say("electrical/set-with-sine"), say("electrical/no-further")],
  };
}

function level(decibels, voltage, power, before) {
  const numbers = [decibels, number(say("electrical/voltage"), voltage, "times"), number(say("electrical/power"), power, "times")];
  return {
    decibels: decibels.value, voltage, power,
    headline: say("electrical/level-means", { level: decibels.text, voltage: numbers[1].text, power: numbers[2].text }),
    numbers: before.concat(numbers), notes: [],
  };
}

export function change(asked) {
  const decibels = given("level", asked.decibels);
  return level(decibels, Math.pow(10, decibels.value / 20), Math.pow(10, decibels.value / 10), []);
}

export function ratio(asked) {
  const one = given("signal", asked.voltage);
  const other = given("signal", asked.against, say("electrical/compared-with"));
  const times = one.value / other.value;
  return level(number(say("electrical/level"), 20 * Math.log10(times), "dB"), times, times * times, [one, other]);
}

function speedOfSound(celsius) {
  const sound = tables.defaults.sound;
  return sound.speed * Math.sqrt((celsius + 273.15) / (sound.at + 273.15));
}

export function delays(asked) {
  const count = asked.distances.length;
  if (count < 2 || count > 32) throw new Refused("electrical/no-delay", { count, most: 32 });
  const ways = asked.distances.map((one, place) => given("distance", one, say("electrical/distance", { number: place + 1 })));
  const air = orUsual("air", asked.air, "air");
  const speed = speedOfSound(air.value);
  const far = Math.max(...asked.distances);
  const waits = asked.distances.map((one, place) => number(say("electrical/delay", { number: place + 1 }), (far - one) / speed, "s"));
  return {
    seconds: waits.map((wait) => wait.value), speed,
    headline: say("electrical/delays", { delays: list(waits.map((wait) => wait.text), "comma") }),
    numbers: ways.concat([air, number(say("electrical/speed-of-sound"), speed, "m/s", say("electrical/by-iso-9613"))], waits),
    notes: [say("electrical/measure-to-head")],
  };
}

export function rest(asked) {
  const battery = given("capacity", asked.capacity);
  const drawn = given("rest", asked.current);
  const part = orUsual("share", asked.share, "rest_share", say("electrical/capacity-share"));
  const days = number(say("electrical/time"), battery.value * part.value / drawn.value / 24, "days");
  const notes = [say("electrical/modules-sleep")];
  if (drawn.value > usual("rest_limit") * (1 + SLACK)) {
    notes.push(say("electrical/stays-awake", { limit: said(usual("rest_limit"), "A") }));
  }
  return {
    days: days.value, headline: say("electrical/rest-days", { time: days.text, share: part.text, capacity: battery.text, current: drawn.text }),
    numbers: [battery, drawn, part, days], notes,
  };
}
