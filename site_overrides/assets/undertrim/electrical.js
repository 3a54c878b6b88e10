/* The arithmetic of power and sound, the same as `undertrim cable`, `load` and `reckon`: numbers in, numbers and words out.
   Tables come as JSON with the page. Every function takes one object and gives { headline, numbers, notes, ... } or throws Refused. */

/** @import { Calculators } from "published" */

const SLACK = 1e-9; // relative; takes up the rounding of floats, nothing else
const KEPT = 12; // digits that two machines agree on; rounding begins from these
const DIGITS = 4;
const CIRCULAR_MIL = Math.PI / 4 * 0.0254 * 0.0254; // mm2
/** @type {Calculators} */
let tables;

/**
 * Takes the tables, before anything is reckoned.
 * @param {Calculators} given
 */
export function use(given) { tables = given; }

/* A question without an answer, with the way out. */
export class Refused extends Error {
  constructor(message, hint) {
    super(message);
    this.hint = hint;
  }
}

function missing(value) { return value === null || value === undefined; }

/* numbers as people read them */

export function shown(value) {
  const parts = Math.abs(value).toExponential(KEPT - 1).split("e");
  const power = Number(parts[1]);
  const kept = Number(parts[0].replace(".", ""));
  const digits = Math.max(DIGITS, Math.min(power + 1, KEPT));
  const rounded = Math.floor(kept / Math.pow(10, KEPT - digits) + 0.5);
  const text = pointed(String(rounded), digits - 1 - power);
  return (value < 0 && rounded ? "-" : "") + text;
}

/* Digits with the point so many places from the right, without trailing zeros. */
function pointed(digits, places) {
  if (places <= 0) return digits === "0" ? "0" : digits + "0".repeat(-places);
  const padded = digits.padStart(places + 1, "0");
  const cut = padded.length - places;
  return (padded.slice(0, cut) + "." + padded.slice(cut)).replace(/\.?0+$/, "");
}

function printed(value, row) {
  return shown(value * row.scale + (row.offset || 0)) + " " + row.symbol;
}

export function said(value, unit) {
  const row = tables.print[unit].find((one) => !("below" in one) || Math.abs(value) < one.below);
  return printed(value, row) + (row.other ? " (" + printed(value, row.other) + ")" : "");
}

function number(label, value, unit, origin) {
  return { label, value, unit, text: said(value, unit), origin: origin || "computed" };
}

/* usual values and refusals */

function usual(name) { return tables.defaults.usual[name]; }

function given(bound, value, label, origin) {
  const row = tables.defaults.bounds[bound];
  const name = label || row.label;
  const hint = "it must be from " + said(row.least, row.unit) + " to " + said(row.most, row.unit) + ": check the number and its unit";
  if (typeof value !== "number" || !isFinite(value)) throw new Refused("the " + name + " is not a number", hint);
  if (value < row.least || value > row.most) throw new Refused("the " + name + " '" + said(value, row.unit) + "' cannot be right", hint);
  return number(name, value, row.unit, origin || "given");
}

function orElse(bound, value, other, label) {
  return missing(value) ? given(bound, other, label, "usual") : given(bound, value, label);
}

function orUsual(bound, value, name, label) { return orElse(bound, value, usual(name), label); }

/* supply */

export function supply(asked) {
  const out = given("power", asked.power);
  const share = orUsual("efficiency", asked.efficiency, "efficiency");
  const volts = orUsual("voltage", asked.voltage, "voltage");
  const found = number("supply current", out.value / (share.value * volts.value), "A");
  return {
    current: found.value,
    headline: out.text + " takes " + found.text + " at " + share.text + " efficiency and " + volts.text,
    numbers: [out, share, volts, found],
    notes: [
      "class AB gives back 50 to 65 % of what it takes, class D 75 to 90 % (common practice)",
      "music takes a third of this or less on average (common practice); cable and fuse are chosen for the whole",
    ],
  };
}

/* conductors */

function gaugeNumber(name) {
  if (/^[1-4]\/0$/.test(name)) return 1 - Number(name[0]);
  return /^[1-9][0-9]?$/.test(name) && Number(name) <= 40 ? Number(name) : null;
}

function made(scheme, name, label, area, resistance, gauge) {
  const origin = tables.cable[scheme].origin;
  return { scheme, name, label, area, resistance, gauge, origin };
}

function solid(area) { return tables.cable.copper.resistivity / area; }

function listed(name) { return name in tables.ampacity.gauges ? name : ""; }

export function diameter(gauge) { return 0.127 * Math.pow(92, (36 - gauge) / 39); }

function awg(name) {
  const across = diameter(gaugeNumber(name));
  const area = Math.PI / 4 * across * across;
  return made("awg", name, name + " AWG", area, solid(area), listed(name));
}

function nextSmaller(area) {
  /** @type {ReturnType<typeof awg> | null} */
  let best = null;
  Object.keys(tables.ampacity.gauges).map(awg).forEach((one) => {
    if (one.area <= area && (!best || one.area > best.area)) best = one;
  });
  return best ? best.name : "";
}

const SCHEMES = {
  awg,
  sae(row) {
    const area = row.cmil * CIRCULAR_MIL;
    return made("sae", row.name, "SAE " + row.name + " AWG", area, solid(area), listed(row.name));
  },
  metric(row) {
    const area = Number(row.name);
    return made("metric", row.name, row.name + " mm²", area, row.ohm_per_km / 1000, nextSmaller(area));
  },
};

export function sizes(scheme) {
  if (!Object.prototype.hasOwnProperty.call(SCHEMES, scheme)) throw new Refused("no scheme of sizes '" + scheme + "'", "write one of " + Object.keys(SCHEMES).join(", "));
  return tables.cable[scheme].sizes.map(SCHEMES[scheme]);
}

export function size(scheme, name) {
  if (scheme === "awg" && gaugeNumber(name) !== null) return awg(name);
  const every = sizes(scheme);
  const found = every.find((one) => one.name === name);
  if (!found) throw new Refused("no " + scheme + " cable of size '" + name + "'", "write one of " + every.map((one) => one.name).join(", "));
  return found;
}

function metal(name, own) {
  const metals = tables.cable.metals;
  if (!Object.prototype.hasOwnProperty.call(metals, name)) throw new Refused("no metal '" + name + "'", "write one of " + Object.keys(metals).join(", "));
  return orElse("metal", own, metals[name]);
}

function perMetre(conductor, celsius, times) {
  const copper = tables.cable.copper;
  return conductor.resistance * times * (1 + copper.alpha * (celsius - copper.at));
}

/* drop */

function circuit(path) {
  const byBody = path.back === "body";
  return {
    current: given("current", path.current),
    out: given("length", path.out, "length out"),
    back: byBody ? null : orElse("length", path.back, path.out, "length back"),
    body: byBody ? orElse("body", path.body, tables.cable.body.resistance) : null,
    voltage: orUsual("voltage", path.voltage, "voltage"),
    conductor: orUsual("conductor", path.conductor, "conductor"),
    times: metal(path.metal || "copper", path.times),
  };
}

function inputs(around) {
  const every = [around.current, around.out, around.back || around.body, around.voltage, around.conductor];
  return around.times.value === 1 ? every : every.concat([around.times]);
}

function lost(around, conductor, celsius) {
  const metres = around.out.value + (around.back ? around.back.value : 0);
  return around.current.value * (metres * perMetre(conductor, celsius, around.times.value) + (around.body ? around.body.value : 0));
}

function way(around) {
  if (around.back) return around.out.text + " out and " + around.back.text + " back by wire";
  return around.out.text + " out and back by the body of the car";
}

function pathNotes(around) {
  const words = [];
  if (around.body && around.body.origin === "usual") {
    words.push("the body is taken to resist " + around.body.text + " with its joints (common practice: 0.5 to 1 mohm): measure the drop under full load");
  }
  if (around.times.value !== 1 && around.times.origin === "usual") {
    words.push("copper-clad aluminium is taken to resist " + around.times.text + " what copper does (from memory)");
  }
  return words;
}

function dropped(around, conductor) {
  const volts = lost(around, conductor, around.conductor.value);
  const warm = lost(around, conductor, usual("warm"));
  const share = volts / around.voltage.value;
  const metre = perMetre(conductor, around.conductor.value, around.times.value);
  const found = [
    number("area", conductor.area, "mm2", conductor.origin),
    number("resistance of the cable", metre, "ohm/m", conductor.origin),
    number("drop", volts, "V"),
    number("drop as a share", share, "share"),
    number("drop with the conductor at " + said(usual("warm"), "degC"), warm, "V"),
  ];
  return {
    volts, share, warm, resistance: metre,
    headline: conductor.label + ": " + found[2].text + " lost, " + found[3].text + " of " + around.voltage.text + "; " + way(around),
    numbers: inputs(around).concat(found), notes: pathNotes(around),
  };
}

export function drop(asked) { return dropped(circuit(asked.path), size(asked.scheme, asked.name)); }

/* ampacity */

function column(around) {
  const columns = tables.ampacity.insulation;
  const found = columns.indexOf(around.insulation);
  if (found < 0) throw new Refused("no table for insulation of '" + around.insulation + "' °C", "write one of " + columns.join(", ") + ", or the next lower");
  if (["cabin", "engine"].indexOf(around.place) < 0) throw new Refused("no place '" + around.place + "' for a cable", "write one of cabin, engine");
  return found;
}

function engineFactor(around) {
  const found = column(around);
  return around.place === "engine" ? tables.ampacity.engine.factors[found] : 1;
}

export function ampacity(conductor, around) {
  const found = column(around);
  if (!conductor.gauge) return null;
  return tables.ampacity.gauges[conductor.gauge][found] * engineFactor(around) / Math.sqrt(around.times);
}

function remembered(around) {
  return around.place === "engine" && tables.ampacity.engine.sure.indexOf(around.insulation) < 0;
}

function ampacityNotes(conductor, around) {
  const words = ["the currents are from 33 CFR 183.425, Table 5, written for boats: a reference, not the law for cars"];
  if (conductor.scheme === "metric") words.push("that table has no metric sizes: taken as " + conductor.gauge + " AWG, the next with less copper");
  if (conductor.scheme === "sae") words.push("that table names gauges: the same numbers are used beside SAE areas (secondary marine tables)");
  if (around.times !== 1) words.push("that table is for copper: scaled down until the same heat arises (derived)");
  if (remembered(around)) words.push("the factor for the engine space is from memory for this insulation");
  if (conductor.gauge === "18") words.push("boats may have 18 AWG only inside a sheath, and 16 AWG at least as a single wire (33 CFR 183.425)");
  return words.concat(["cables in a bundle carry less, which is not computed here"]);
}

/* fuses */

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

function nextFuse(current, share) {
  const enough = fuses().map((fuse) => fuse.amps).filter((amps) => amps >= current / share * (1 - SLACK));
  return enough.length ? Math.min(...enough) : null;
}

function described(amps) {
  return fuses().filter((fuse) => fuse.amps === amps).map((fuse) => fuse.colour ? fuse.name + " (" + fuse.colour + ")" : fuse.name).join(" or ") || "in no family listed here";
}

function fuseNotes(amps) {
  const words = ["put the fuse at the source, within " + said(tables.fuses.place.within, "m") + " of it along the cable (common practice), before anything else"];
  const found = fuses().filter((fuse) => fuse.amps === amps);
  if (found.length && !found.some((fuse) => fuse.sure)) words.push("ratings of bolt-in strips are from memory: what their maker lists comes first");
  return words;
}

/* cable */

function chosenFuse(current, share, own) {
  if (missing(own)) {
    const amps = nextFuse(current.value, share.value);
    return amps === null ? null : number("fuse", amps, "A");
  }
  const fuse = given("fuse", own);
  if (fuse.value < current.value * (1 - SLACK)) {
    throw new Refused("a fuse of '" + fuse.text + "' does not hold '" + current.text + "'", "take a fuse of at least " + said(current.value / share.value, "A") + ", or a smaller load");
  }
  return fuse;
}

function wished(path, wishes) {
  const made = circuit(path);
  const byDefault = missing(wishes.insulation);
  const insulation = number("insulation bears", byDefault ? usual("insulation") : wishes.insulation, "degC", byDefault ? "usual" : "given");
  const share = orElse("share", wishes.share, tables.fuses.load.share, "load of the fuse at most");
  return {
    made, insulation, share, scheme: wishes.scheme || "awg",
    around: { insulation: insulation.value, place: wishes.place || "cabin", times: made.times.value },
    limit: orUsual("limit", wishes.limit, "limit", "drop at most"),
    fuse: chosenFuse(made.current, share, wishes.fuse),
  };
}

function carries(asked, conductor, amps) {
  const allowed = ampacity(conductor, asked.around);
  return allowed !== null && allowed * (1 + SLACK) >= amps;
}

function firstName(offered, meets) {
  const found = offered.find(meets);
  return found ? found.name : null;
}

function conditions(asked, offered) {
  const made = asked.made;
  const most = asked.limit.value * made.voltage.value * (1 + SLACK);
  const little = firstName(offered, (one) => lost(made, one, made.conductor.value) <= most);
  const carrying = firstName(offered, (one) => carries(asked, one, made.current.value));
  const guarded = asked.fuse && firstName(offered, (one) => carries(asked, one, asked.fuse.value));
  const need = asked.fuse
    ? "carry what its fuse of " + asked.fuse.text + " lets through"
    : "have a fuse of at least " + said(made.current.value / asked.share.value, "A") + ", and none so large is listed";
  return [
    { name: "drop", words: "lose at most " + asked.limit.text + " of " + made.voltage.text, size: little },
    { name: "ampacity", words: "carry " + made.current.text, size: carrying },
    { name: "fuse", words: need, size: guarded },
  ];
}

function around(asked) {
  if (asked.around.place !== "engine") return [asked.insulation];
  const origin = remembered(asked.around) ? "from memory" : "33 CFR 183.425, note 1 (secondary)";
  return [asked.insulation, number("factor for the engine space", engineFactor(asked.around), "times", origin)];
}

const SHARE_OUT = "share the load out over several cables, each with its own fuse";
const WAYS_OUT = { drop: "shorten the way, or allow more drop", ampacity: SHARE_OUT, fuse: SHARE_OUT };

function noCable(asked, wanted) {
  const unmet = wanted.filter((one) => one.size === null);
  const words = unmet.map((one) => one.words).join(" and ");
  const ways = unmet.map((one) => WAYS_OUT[one.name]).filter((one, place, every) => every.indexOf(one) === place);
  return {
    size: null, binding: unmet.map((one) => one.name), conditions: wanted,
    volts: null, share: null, ampacity: null, fuse: null,
    headline: "no " + asked.scheme + " cable listed can " + words + ": " + ways.join(" or "),
    numbers: inputs(asked.made).concat([asked.limit, asked.share], around(asked)), notes: pathNotes(asked.made),
  };
}

const DECIDERS = { drop: "the drop", ampacity: "what the cable carries", fuse: "the fuse" };

function decides(binding) {
  if (!binding.length) return "the thinnest in the table of currents does";
  const words = binding.map((name) => DECIDERS[name]).join(" and ");
  return words + (binding.length === 1 ? " decides" : " decide");
}

function chosenFuseNotes(asked) {
  const fuse = asked.fuse;
  const current = asked.made.current;
  const words = ["fuse of " + fuse.text + ": " + described(fuse.value)].concat(fuseNotes(fuse.value));
  if (current.value > asked.share.value * fuse.value * (1 + SLACK)) {
    words.push(current.text + " is more than " + asked.share.text + " of the fuse: it ages, or blows when warm (common practice)");
  }
  return words;
}

function withCable(asked, conductor, wanted, binding) {
  const found = dropped(asked.made, conductor);
  const source = "33 CFR 183.425, Table 5" + (asked.around.times !== 1 ? ", scaled (derived)" : "");
  const allowed = number("the cable carries", ampacity(conductor, asked.around), "A", source);
  return {
    size: conductor.name, binding, conditions: wanted,
    volts: found.volts, share: found.share, ampacity: allowed.value, fuse: asked.fuse.value,
    headline: conductor.label + ", fuse " + asked.fuse.text + ": " + said(found.volts, "V") + " lost, " + said(found.share, "share") + " of " + asked.made.voltage.text + "; " + decides(binding),
    numbers: found.numbers.concat([asked.limit, asked.share], around(asked), [allowed, asked.fuse]),
    notes: chosenFuseNotes(asked).concat(pathNotes(asked.made), ampacityNotes(conductor, asked.around)),
  };
}

export function cable(asked) {
  const all = wished(asked.path, asked.wishes || {});
  const offered = sizes(all.scheme).filter((one) => one.gauge); // what a thinner one carries is not known
  const wanted = conditions(all, offered);
  if (wanted.some((one) => one.size === null)) return noCable(all, wanted);
  const names = offered.map((one) => one.name);
  const place = Math.max(...wanted.map((one) => names.indexOf(one.size)));
  const binding = wanted.filter((one) => place && one.size === names[place]).map((one) => one.name);
  return withCable(all, offered[place], wanted, binding);
}

/* speakers */

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

/* filters */

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

/* levels */

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

/* delay and rest */

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
