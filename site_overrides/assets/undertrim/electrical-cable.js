/* The cable and fuse for a load, the same as `undertrim cable`. */

import { circuit, dropped, inputs, lost, pathNotes, schemeWord, sizes } from "./electrical-drop.js";
import { ampacity, ampacityNotes, described, engineFactor, fuseNotes, nextFuse, remembered } from "./electrical-fuses.js";
import { Refused, SLACK, given, missing, number, orElse, orUsual, said, tables, usual } from "./electrical-numbers.js";
import { list, say } from "./words.js";

function chosenFuse(current, share, own) {
  if (missing(own)) {
    const amps = nextFuse(current.value, share.value);
    return amps === null ? null : number(say("electrical/fuse"), amps, "A");
  }
  const fuse = given("fuse", own);
  if (fuse.value < current.value * (1 - SLACK)) {
    throw new Refused("electrical/fuse-too-small", { fuse: fuse.text, current: current.text, least: said(current.value / share.value, "A") });
  }
  return fuse;
}

function wished(path, wishes) {
  const made = circuit(path);
  const byDefault = missing(wishes.insulation);
  const insulation = number(say("electrical/insulation-bears"), byDefault ? usual("insulation") : wishes.insulation, "degC", byDefault ? "usual" : "given");
  const share = orElse("share", wishes.share, tables.fuses.load.share, say("electrical/fuse-share"));
  return {
    made, insulation, share, scheme: wishes.scheme || "awg",
    around: { insulation: insulation.value, place: wishes.place || "cabin", times: made.times.value },
    limit: orUsual("limit", wishes.limit, "limit", say("electrical/drop-at-most")),
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
    ? say("electrical/carry-what-fuse-lets", { fuse: asked.fuse.text })
    : say("electrical/no-fuse-so-large", { least: said(made.current.value / asked.share.value, "A") });
  return [
    { name: "drop", words: say("electrical/lose", { limit: asked.limit.text, voltage: made.voltage.text }), size: little },
    { name: "ampacity", words: say("electrical/carry", { current: made.current.text }), size: carrying },
    { name: "fuse", words: need, size: guarded },
  ];
}

function around(asked) {
  if (asked.around.place !== "engine") return [asked.insulation];
  const origin = say(remembered(asked.around) ? "electrical/from-memory" : "electrical/by-note-1");
  return [asked.insulation, number(say("electrical/engine-factor"), engineFactor(asked.around), "times", origin)];
}

const WAYS_OUT = { drop: "electrical/shorten", ampacity: "electrical/share-out", fuse: "electrical/share-out" };

function noCable(asked, wanted) {
  const unmet = wanted.filter((one) => one.size === null);
  const failed = list(unmet.map((one) => one.words));
  const ways = Array.from(new Set(unmet.map((one) => WAYS_OUT[one.name]))).map((code) => say(code));
  return {
    size: null, binding: unmet.map((one) => one.name), conditions: wanted,
    volts: null, share: null, ampacity: null, fuse: null,
    headline: say("electrical/no-cable", { scheme: schemeWord(asked.scheme), conditions: failed, ways: list(ways, "or") }),
    numbers: inputs(asked.made).concat([asked.limit, asked.share], around(asked)), notes: pathNotes(asked.made),
  };
}

function decides(binding) {
  if (!binding.length) return say("electrical/thinnest-does");
  return say("electrical/decides", { conditions: list(binding.map((name) => say(`electrical/decider-${name}`))), count: binding.length });
}

function chosenFuseNotes(asked) {
  const fuse = asked.fuse;
  const current = asked.made.current;
  const words = [say("electrical/fuse-families", { fuse: fuse.text, families: described(fuse.value) })].concat(fuseNotes(fuse.value));
  if (current.value > asked.share.value * fuse.value * (1 + SLACK)) {
    words.push(say("electrical/fuse-ages", { current: current.text, share: asked.share.text }));
  }
  return words;
}

function withCable(asked, conductor, wanted, binding) {
  const found = dropped(asked.made, conductor);
  const table = tables.ampacity.origin;
  const source = asked.around.times !== 1 ? say("electrical/scaled", { source: table }) : table;
  const allowed = number(say("electrical/cable-carries"), ampacity(conductor, asked.around), "A", source);
  return {
    size: conductor.name, binding, conditions: wanted,
    volts: found.volts, share: found.share, ampacity: allowed.value, fuse: asked.fuse.value,
    headline: say("electrical/cable", {
      size: conductor.label, fuse: asked.fuse.text, lost: said(found.volts, "V"), share: said(found.share, "share"),
      voltage: asked.made.voltage.text, decides: decides(binding),
    }),
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
