/* What a load takes, what conductors are, and the voltage lost along them. */

import { CIRCULAR_MIL, Refused, given, number, orElse, orUsual, said, tables, usual } from "./electrical-numbers.js";
import { list, say } from "./words.js";

export function supply(asked) {
  const out = given("power", asked.power);
  const share = orUsual("efficiency", asked.efficiency, "efficiency");
  const volts = orUsual("voltage", asked.voltage, "voltage");
  const found = number(say("electrical/supply-current"), out.value / (share.value * volts.value), "A");
  return {
    current: found.value,
    headline: say("electrical/supply", { power: out.text, current: found.text, efficiency: share.text, voltage: volts.text }),
    numbers: [out, share, volts, found],
    notes: [say("electrical/efficiency-of-classes"), say("electrical/music-takes-less")],
  };
}

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
  return made("awg", name, say("electrical/size-awg", { name }), area, solid(area), listed(name));
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
    return made("sae", row.name, say("electrical/size-sae", { name: row.name }), area, solid(area), listed(row.name));
  },
  metric(row) {
    const area = Number(row.name);
    return made("metric", row.name, say("electrical/size-metric", { area }), area, row.ohm_per_km / 1000, nextSmaller(area));
  },
};

/* A scheme as it stands before "cable". */
export function schemeWord(scheme) { return say(`electrical/scheme-${scheme}`); }

export function sizes(scheme) {
  if (!Object.prototype.hasOwnProperty.call(SCHEMES, scheme)) throw new Refused("electrical/no-scheme", { scheme, known: list(Object.keys(SCHEMES), "comma") });
  return tables.cable[scheme].sizes.map(SCHEMES[scheme]);
}

export function size(scheme, name) {
  if (scheme === "awg" && gaugeNumber(name) !== null) return awg(name);
  const every = sizes(scheme);
  const found = every.find((one) => one.name === name);
  if (!found) throw new Refused("electrical/no-size", { scheme: schemeWord(scheme), name, known: list(every.map((one) => one.name), "comma") });
  return found;
}

function metal(name, own) {
  const metals = tables.cable.metals;
  if (!Object.prototype.hasOwnProperty.call(metals, name)) throw new Refused("electrical/no-metal", { metal: name, known: list(Object.keys(metals), "comma") });
  return orElse("metal", own, metals[name]);
}

function perMetre(conductor, celsius, times) {
  const copper = tables.cable.copper;
  return conductor.resistance * times * (1 + copper.alpha * (celsius - copper.at));
}

export function circuit(path) {
  const byBody = path.back === "body";
  return {
    current: given("current", path.current),
    out: given("length", path.out, say("electrical/length-out")),
    back: byBody ? null : orElse("length", path.back, path.out, say("electrical/length-back")),
    body: byBody ? orElse("body", path.body, tables.cable.body.resistance) : null,
    voltage: orUsual("voltage", path.voltage, "voltage"),
    conductor: orUsual("conductor", path.conductor, "conductor"),
    times: metal(path.metal || "copper", path.times),
  };
}

export function inputs(around) {
  const every = [around.current, around.out, around.back || around.body, around.voltage, around.conductor];
  return around.times.value === 1 ? every : every.concat([around.times]);
}

export function lost(around, conductor, celsius) {
  const metres = around.out.value + (around.back ? around.back.value : 0);
  return around.current.value * (metres * perMetre(conductor, celsius, around.times.value) + (around.body ? around.body.value : 0));
}

function way(around) {
  if (around.back) return say("electrical/way-by-wire", { out: around.out.text, back: around.back.text });
  return say("electrical/way-by-body", { out: around.out.text });
}

export function pathNotes(around) {
  const words = [];
  if (around.body && around.body.origin === "usual") {
    words.push(say("electrical/body-assumed", { resistance: around.body.text }));
  }
  if (around.times.value !== 1 && around.times.origin === "usual") {
    words.push(say("electrical/clad-assumed", { times: around.times.text }));
  }
  return words;
}

export function dropped(around, conductor) {
  const volts = lost(around, conductor, around.conductor.value);
  const warm = lost(around, conductor, usual("warm"));
  const share = volts / around.voltage.value;
  const metre = perMetre(conductor, around.conductor.value, around.times.value);
  const found = [
    number(say("electrical/area"), conductor.area, "mm2", conductor.origin),
    number(say("electrical/resistance"), metre, "ohm/m", conductor.origin),
    number(say("electrical/drop"), volts, "V"),
    number(say("electrical/drop-share"), share, "share"),
    number(say("electrical/drop-warm", { at: said(usual("warm"), "degC") }), warm, "V"),
  ];
  return {
    volts, share, warm, resistance: metre,
    headline: say("electrical/drop-along", { size: conductor.label, lost: found[2].text, share: found[3].text, voltage: around.voltage.text, way: way(around) }),
    numbers: inputs(around).concat(found), notes: pathNotes(around),
  };
}

export function drop(asked) { return dropped(circuit(asked.path), size(asked.scheme, asked.name)); }
