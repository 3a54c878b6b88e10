/* The cable and fuse for a load, the same as `undertrim cable`. */

import { circuit, dropped, inputs, lost, pathNotes, sizes } from "./electrical-drop.js";
import { ampacity, ampacityNotes, described, engineFactor, fuseNotes, nextFuse, remembered } from "./electrical-fuses.js";
import { Refused, SLACK, given, missing, number, orElse, orUsual, said, tables, usual } from "./electrical-numbers.js";

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
