/* The arithmetic of power and sound, the same as `undertrim cable`, `load` and `reckon`: numbers in, numbers and words out.
   Tables come as JSON with the page. Every function takes one object and gives { headline, numbers, notes, ... } or throws Refused. */
(function () {
  "use strict";

  var SLACK = 1e-9; // relative; takes up the rounding of floats, nothing else
  var KEPT = 12; // digits that two machines agree on; rounding begins from these
  var DIGITS = 4;
  var CIRCULAR_MIL = Math.PI / 4 * 0.0254 * 0.0254; // mm2
  var tables = {};

  function use(given) {
    tables = given;
    return api;
  }

  function Refused(message, hint) {
    this.message = message;
    this.hint = hint;
  }

  function missing(value) { return value === null || value === undefined; }

  /* numbers as people read them */

  function shown(value) {
    var parts = Math.abs(value).toExponential(KEPT - 1).split("e");
    var power = Number(parts[1]);
    var kept = Number(parts[0].replace(".", ""));
    var digits = Math.max(DIGITS, Math.min(power + 1, KEPT));
    var rounded = Math.floor(kept / Math.pow(10, KEPT - digits) + 0.5);
    var text = pointed(String(rounded), digits - 1 - power);
    return (value < 0 && rounded ? "-" : "") + text;
  }

  /* Digits with the point so many places from the right, without trailing zeros. */
  function pointed(digits, places) {
    if (places <= 0) return digits === "0" ? "0" : digits + "0".repeat(-places);
    var padded = digits.padStart(places + 1, "0");
    var cut = padded.length - places;
    return (padded.slice(0, cut) + "." + padded.slice(cut)).replace(/\.?0+$/, "");
  }

  function printed(value, row) {
    return shown(value * row.scale + (row.offset || 0)) + " " + row.symbol;
  }

  function said(value, unit) {
    var row = tables.print[unit].find(function (one) { return !("below" in one) || Math.abs(value) < one.below; });
    return printed(value, row) + (row.other ? " (" + printed(value, row.other) + ")" : "");
  }

  function number(label, value, unit, origin) {
    return { label: label, value: value, unit: unit, text: said(value, unit), origin: origin || "computed" };
  }

  /* usual values and refusals */

  function usual(name) { return tables.defaults.usual[name]; }

  function given(bound, value, label, origin) {
    var row = tables.defaults.bounds[bound];
    var name = label || row.label;
    var hint = "it must be from " + said(row.least, row.unit) + " to " + said(row.most, row.unit) + ": check the number and its unit";
    if (typeof value !== "number" || !isFinite(value)) throw new Refused("the " + name + " is not a number", hint);
    if (value < row.least || value > row.most) throw new Refused("the " + name + " '" + said(value, row.unit) + "' cannot be right", hint);
    return number(name, value, row.unit, origin || "given");
  }

  function orElse(bound, value, other, label) {
    return missing(value) ? given(bound, other, label, "usual") : given(bound, value, label);
  }

  function orUsual(bound, value, name, label) { return orElse(bound, value, usual(name), label); }

  /* supply */

  function supply(asked) {
    var out = given("power", asked.power);
    var share = orUsual("efficiency", asked.efficiency, "efficiency");
    var volts = orUsual("voltage", asked.voltage, "voltage");
    var found = number("supply current", out.value / (share.value * volts.value), "A");
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
    var origin = tables.cable[scheme].origin;
    return { scheme: scheme, name: name, label: label, area: area, resistance: resistance, gauge: gauge, origin: origin };
  }

  function solid(area) { return tables.cable.copper.resistivity / area; }

  function listed(name) { return name in tables.ampacity.gauges ? name : ""; }

  function diameter(gauge) { return 0.127 * Math.pow(92, (36 - gauge) / 39); }

  function awg(name) {
    var across = diameter(gaugeNumber(name));
    var area = Math.PI / 4 * across * across;
    return made("awg", name, name + " AWG", area, solid(area), listed(name));
  }

  function nextSmaller(area) {
    var best = null;
    Object.keys(tables.ampacity.gauges).map(awg).forEach(function (one) {
      if (one.area <= area && (!best || one.area > best.area)) best = one;
    });
    return best ? best.name : "";
  }

  var SCHEMES = {
    awg: awg,
    sae: function (row) {
      var area = row.cmil * CIRCULAR_MIL;
      return made("sae", row.name, "SAE " + row.name + " AWG", area, solid(area), listed(row.name));
    },
    metric: function (row) {
      var area = Number(row.name);
      return made("metric", row.name, row.name + " mm²", area, row.ohm_per_km / 1000, nextSmaller(area));
    },
  };

  function sizes(scheme) {
    if (!Object.prototype.hasOwnProperty.call(SCHEMES, scheme)) throw new Refused("no scheme of sizes '" + scheme + "'", "write one of " + Object.keys(SCHEMES).join(", "));
    return tables.cable[scheme].sizes.map(SCHEMES[scheme]);
  }

  function size(scheme, name) {
    if (scheme === "awg" && gaugeNumber(name) !== null) return awg(name);
    var every = sizes(scheme);
    var found = every.find(function (one) { return one.name === name; });
    if (!found) throw new Refused("no " + scheme + " cable of size '" + name + "'", "write one of " + every.map(function (one) { return one.name; }).join(", "));
    return found;
  }

  function metal(name, own) {
    var metals = tables.cable.metals;
    if (!Object.prototype.hasOwnProperty.call(metals, name)) throw new Refused("no metal '" + name + "'", "write one of " + Object.keys(metals).join(", "));
    return orElse("metal", own, metals[name]);
  }

  function perMetre(conductor, celsius, times) {
    var copper = tables.cable.copper;
    return conductor.resistance * times * (1 + copper.alpha * (celsius - copper.at));
  }

  /* drop */

  function circuit(path) {
    var byBody = path.back === "body";
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
    var every = [around.current, around.out, around.back || around.body, around.voltage, around.conductor];
    return around.times.value === 1 ? every : every.concat([around.times]);
  }

  function lost(around, conductor, celsius) {
    var metres = around.out.value + (around.back ? around.back.value : 0);
    return around.current.value * (metres * perMetre(conductor, celsius, around.times.value) + (around.body ? around.body.value : 0));
  }

  function way(around) {
    if (around.back) return around.out.text + " out and " + around.back.text + " back by wire";
    return around.out.text + " out and back by the body of the car";
  }

  function pathNotes(around) {
    var words = [];
    if (around.body && around.body.origin === "usual") {
      words.push("the body is taken to resist " + around.body.text + " with its joints (common practice: 0.5 to 1 mohm): measure the drop under full load");
    }
    if (around.times.value !== 1 && around.times.origin === "usual") {
      words.push("copper-clad aluminium is taken to resist " + around.times.text + " what copper does (from memory)");
    }
    return words;
  }

  function dropped(around, conductor) {
    var volts = lost(around, conductor, around.conductor.value);
    var warm = lost(around, conductor, usual("warm"));
    var share = volts / around.voltage.value;
    var metre = perMetre(conductor, around.conductor.value, around.times.value);
    var found = [
      number("area", conductor.area, "mm2", conductor.origin),
      number("resistance of the cable", metre, "ohm/m", conductor.origin),
      number("drop", volts, "V"),
      number("drop as a share", share, "share"),
      number("drop with the conductor at " + said(usual("warm"), "degC"), warm, "V"),
    ];
    return {
      volts: volts, share: share, warm: warm, resistance: metre,
      headline: conductor.label + ": " + found[2].text + " lost, " + found[3].text + " of " + around.voltage.text + "; " + way(around),
      numbers: inputs(around).concat(found), notes: pathNotes(around),
    };
  }

  function drop(asked) { return dropped(circuit(asked.path), size(asked.scheme, asked.name)); }

  /* ampacity */

  function column(around) {
    var columns = tables.ampacity.insulation;
    var found = columns.indexOf(around.insulation);
    if (found < 0) throw new Refused("no table for insulation of '" + around.insulation + "' °C", "write one of " + columns.join(", ") + ", or the next lower");
    if (["cabin", "engine"].indexOf(around.place) < 0) throw new Refused("no place '" + around.place + "' for a cable", "write one of cabin, engine");
    return found;
  }

  function engineFactor(around) {
    var found = column(around);
    return around.place === "engine" ? tables.ampacity.engine.factors[found] : 1;
  }

  function ampacity(conductor, around) {
    var found = column(around);
    if (!conductor.gauge) return null;
    return tables.ampacity.gauges[conductor.gauge][found] * engineFactor(around) / Math.sqrt(around.times);
  }

  function remembered(around) {
    return around.place === "engine" && tables.ampacity.engine.sure.indexOf(around.insulation) < 0;
  }

  function ampacityNotes(conductor, around) {
    var words = ["the currents are from 33 CFR 183.425, Table 5, written for boats: a reference, not the law for cars"];
    if (conductor.scheme === "metric") words.push("that table has no metric sizes: taken as " + conductor.gauge + " AWG, the next with less copper");
    if (conductor.scheme === "sae") words.push("that table names gauges: the same numbers are used beside SAE areas (secondary marine tables)");
    if (around.times !== 1) words.push("that table is for copper: scaled down until the same heat arises (derived)");
    if (remembered(around)) words.push("the factor for the engine space is from memory for this insulation");
    if (conductor.gauge === "18") words.push("boats may have 18 AWG only inside a sheath, and 16 AWG at least as a single wire (33 CFR 183.425)");
    return words.concat(["cables in a bundle carry less, which is not computed here"]);
  }

  /* fuses */

  function fuses() {
    var rows = {};
    tables.fuses.families.forEach(function (family) { rows[family.id] = family.ratings; });
    return [].concat.apply([], tables.fuses.families.map(function (family) {
      return rows[family.same || family.id].filter(function (row) {
        return row.amps >= (family.least || 0) && row.amps <= (family.most || Infinity);
      }).map(function (row) {
        return { family: family.id, name: family.name, amps: row.amps, colour: row.colour, sure: family.sure };
      });
    }));
  }

  function readings(asked) {
    var found = fuses().filter(function (fuse) { return fuse.colour && fuse.colour === asked.colour; });
    if (!found.length) {
      var known = fuses().map(function (fuse) { return fuse.colour; }).filter(function (colour, place, every) { return colour && every.indexOf(colour) === place; });
      throw new Refused("no fuse is '" + asked.colour + "'", "colours: " + known.join(", "));
    }
    return {
      fuses: found,
      headline: asked.colour + ": " + found.map(function (fuse) { return fuse.name + " " + said(fuse.amps, "A"); }).join("; "),
      numbers: found.map(function (fuse) { return number(fuse.name, fuse.amps, "A", "DIN 72581, ISO 8820-3 (secondary)"); }),
      notes: ["the number on the fuse comes before its colour"],
    };
  }

  function nextFuse(current, share) {
    var enough = fuses().map(function (fuse) { return fuse.amps; }).filter(function (amps) { return amps >= current / share * (1 - SLACK); });
    return enough.length ? Math.min.apply(null, enough) : null;
  }

  function described(amps) {
    return fuses().filter(function (fuse) { return fuse.amps === amps; }).map(function (fuse) {
      return fuse.colour ? fuse.name + " (" + fuse.colour + ")" : fuse.name;
    }).join(" or ") || "in no family listed here";
  }

  function fuseNotes(amps) {
    var words = ["put the fuse at the source, within " + said(tables.fuses.place.within, "m") + " of it along the cable (common practice), before anything else"];
    var found = fuses().filter(function (fuse) { return fuse.amps === amps; });
    if (found.length && !found.some(function (fuse) { return fuse.sure; })) words.push("ratings of bolt-in strips are from memory: what their maker lists comes first");
    return words;
  }

  /* cable */

  function chosenFuse(current, share, own) {
    if (missing(own)) {
      var amps = nextFuse(current.value, share.value);
      return amps === null ? null : number("fuse", amps, "A");
    }
    var fuse = given("fuse", own);
    if (fuse.value < current.value * (1 - SLACK)) {
      throw new Refused("a fuse of '" + fuse.text + "' does not hold '" + current.text + "'", "take a fuse of at least " + said(current.value / share.value, "A") + ", or a smaller load");
    }
    return fuse;
  }

  function wished(path, wishes) {
    var made = circuit(path);
    var byDefault = missing(wishes.insulation);
    var insulation = number("insulation bears", byDefault ? usual("insulation") : wishes.insulation, "degC", byDefault ? "usual" : "given");
    var share = orElse("share", wishes.share, tables.fuses.load.share, "load of the fuse at most");
    return {
      made: made, insulation: insulation, share: share, scheme: wishes.scheme || "awg",
      around: { insulation: insulation.value, place: wishes.place || "cabin", times: made.times.value },
      limit: orUsual("limit", wishes.limit, "limit", "drop at most"),
      fuse: chosenFuse(made.current, share, wishes.fuse),
    };
  }

  function carries(asked, conductor, amps) {
    var allowed = ampacity(conductor, asked.around);
    return allowed !== null && allowed * (1 + SLACK) >= amps;
  }

  function firstName(offered, meets) {
    var found = offered.find(meets);
    return found ? found.name : null;
  }

  function conditions(asked, offered) {
    var made = asked.made;
    var most = asked.limit.value * made.voltage.value * (1 + SLACK);
    var little = firstName(offered, function (one) { return lost(made, one, made.conductor.value) <= most; });
    var carrying = firstName(offered, function (one) { return carries(asked, one, made.current.value); });
    var guarded = asked.fuse && firstName(offered, function (one) { return carries(asked, one, asked.fuse.value); });
    var need = asked.fuse
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
    var origin = remembered(asked.around) ? "from memory" : "33 CFR 183.425, note 1 (secondary)";
    return [asked.insulation, number("factor for the engine space", engineFactor(asked.around), "times", origin)];
  }

  var SHARE_OUT = "share the load out over several cables, each with its own fuse";
  var WAYS_OUT = { drop: "shorten the way, or allow more drop", ampacity: SHARE_OUT, fuse: SHARE_OUT };

  function noCable(asked, wanted) {
    var unmet = wanted.filter(function (one) { return one.size === null; });
    var words = unmet.map(function (one) { return one.words; }).join(" and ");
    var ways = unmet.map(function (one) { return WAYS_OUT[one.name]; }).filter(function (one, place, every) { return every.indexOf(one) === place; });
    return {
      size: null, binding: unmet.map(function (one) { return one.name; }), conditions: wanted,
      volts: null, share: null, ampacity: null, fuse: null,
      headline: "no " + asked.scheme + " cable listed can " + words + ": " + ways.join(" or "),
      numbers: inputs(asked.made).concat([asked.limit, asked.share], around(asked)), notes: pathNotes(asked.made),
    };
  }

  var DECIDERS = { drop: "the drop", ampacity: "what the cable carries", fuse: "the fuse" };

  function decides(binding) {
    if (!binding.length) return "the thinnest in the table of currents does";
    var words = binding.map(function (name) { return DECIDERS[name]; }).join(" and ");
    return words + (binding.length === 1 ? " decides" : " decide");
  }

  function chosenFuseNotes(asked) {
    var fuse = asked.fuse;
    var current = asked.made.current;
    var words = ["fuse of " + fuse.text + ": " + described(fuse.value)].concat(fuseNotes(fuse.value));
    if (current.value > asked.share.value * fuse.value * (1 + SLACK)) {
      words.push(current.text + " is more than " + asked.share.text + " of the fuse: it ages, or blows when warm (common practice)");
    }
    return words;
  }

  function withCable(asked, conductor, wanted, binding) {
    var found = dropped(asked.made, conductor);
    var source = "33 CFR 183.425, Table 5" + (asked.around.times !== 1 ? ", scaled (derived)" : "");
    var allowed = number("the cable carries", ampacity(conductor, asked.around), "A", source);
    return {
      size: conductor.name, binding: binding, conditions: wanted,
      volts: found.volts, share: found.share, ampacity: allowed.value, fuse: asked.fuse.value,
      headline: conductor.label + ", fuse " + asked.fuse.text + ": " + said(found.volts, "V") + " lost, " + said(found.share, "share") + " of " + asked.made.voltage.text + "; " + decides(binding),
      numbers: found.numbers.concat([asked.limit, asked.share], around(asked), [allowed, asked.fuse]),
      notes: chosenFuseNotes(asked).concat(pathNotes(asked.made), ampacityNotes(conductor, asked.around)),
    };
  }

  function cable(asked) {
    var all = wished(asked.path, asked.wishes || {});
    var offered = sizes(all.scheme).filter(function (one) { return one.gauge; }); // what a thinner one carries is not known
    var wanted = conditions(all, offered);
    if (wanted.some(function (one) { return one.size === null; })) return noCable(all, wanted);
    var names = offered.map(function (one) { return one.name; });
    var place = Math.max.apply(null, wanted.map(function (one) { return names.indexOf(one.size); }));
    var binding = wanted.filter(function (one) { return place && one.size === names[place]; }).map(function (one) { return one.name; });
    return withCable(all, offered[place], wanted, binding);
  }

  /* speakers */

  var HINT = "write ohms with + for series, | for parallel and brackets: '4+4 | 4+4'";
  var LONGEST = 200;
  var DEEPEST = 20;

  function series(loads) { return loads.reduce(function (sum, one) { return sum + one; }, 0); }

  function parallel(loads) { return 1 / loads.reduce(function (sum, one) { return sum + 1 / one; }, 0); }

  function load(total, speakers, how, least) {
    var allowed = orUsual("load", least, "least_load", "least load");
    var found = number("load", total, "ohm");
    var notes = [];
    if (total < allowed.value * (1 - SLACK)) {
      var common = allowed.origin === "usual" ? " that outputs usually allow (common practice)" : " that the output allows";
      notes.push(found.text + " is below the " + allowed.text + common + ": the amplifier may overheat or shut down");
    }
    notes.push("nominal ohms are not what a meter reads: a 4 ohm speaker shows about 3.2 to 3.6 ohm (common practice)");
    return {
      ohms: total, count: speakers.length,
      headline: speakers.length + " speaker" + (speakers.length > 1 ? "s" : "") + ", " + how + ": " + found.text,
      numbers: speakers.concat([allowed, found]), notes: notes,
    };
  }

  function wired(asked) {
    if (!asked.ohms.length) throw new Refused("no speaker is given", HINT);
    var speakers = asked.ohms.map(function (one, place) { return given("load", one, "speaker " + (place + 1)); });
    return load((asked.how === "parallel" ? parallel : series)(asked.ohms), speakers, asked.how, asked.least);
  }

  function tokens(text) {
    if (text.length > LONGEST) throw new Refused("the arrangement is too long", "write at most " + LONGEST + " characters");
    var token = / *([0-9]{1,6}(?:\.[0-9]{1,6})?|[+|()]) */y;
    var found = [];
    for (var place = 0; place < text.length; place = token.lastIndex) {
      token.lastIndex = place;
      var match = token.exec(text);
      if (!match) throw new Refused("'" + String.fromCodePoint(text.codePointAt(place)) + "' cannot be read in '" + text + "'", HINT);
      found.push(match[1]);
    }
    return found;
  }

  /* Reads tokens by descent: parallel branches of series of speakers or brackets. */
  function arranged(asked) {
    var left = tokens(asked.text);
    var depth = 0;
    var speakers = [];

    function takes(token) {
      if (left[0] !== token) return false;
      left.shift();
      return true;
    }
    function branches() {
      var found = [chain()];
      while (takes("|")) found.push(chain());
      return found.length > 1 ? parallel(found) : found[0];
    }
    function chain() {
      var found = [one()];
      while (takes("+")) found.push(one());
      return series(found);
    }
    function bracket() {
      depth += 1;
      if (depth > DEEPEST) throw new Refused("the brackets are too deep", HINT);
      var total = branches();
      if (!takes(")")) throw new Refused("a bracket is not closed", HINT);
      depth -= 1;
      return total;
    }
    function one() {
      if (takes("(")) return bracket();
      if (!/^[0-9]/.test(left[0] || "")) throw new Refused("a speaker is missing " + (left.length ? "before '" + left[0] + "'" : "at the end"), HINT);
      var ohms = Number(left.shift());
      speakers.push(given("load", ohms, "speaker " + (speakers.length + 1)));
      return ohms;
    }

    var total = branches();
    if (left.length) throw new Refused("'" + left[0] + "' stands where it cannot", HINT);
    return load(total, speakers, asked.text.split(/\s+/).filter(Boolean).join(" "), asked.least);
  }

  /* filters */

  var FILTER_NOTES = [
    "first order: 6 dB an octave, 3 dB down at this frequency into a load that does not change with frequency",
    "a real speaker's load does change, so that the true corner lies elsewhere: listen, or measure",
  ];

  function capacitorFor(frequency, ohms) { return 1 / (2 * Math.PI * frequency * ohms); }

  function neighbours(value) {
    var power = Math.floor(Math.log10(value));
    var values = [];
    [power - 1, power, power + 1].forEach(function (decade) {
      tables.defaults.series.e12.forEach(function (step) { values.push(step * Math.pow(10, decade)); });
    });
    var place = values.findIndex(function (one) { return one > value * (1 + SLACK); });
    return [values[place - 1], values[place]];
  }

  function filterAt(asked) {
    var corner = given("frequency", asked.frequency);
    var ohms = given("load", asked.load);
    var capacitor = number("capacitor", capacitorFor(corner.value, ohms.value), "F");
    var coil = number("coil", ohms.value / (2 * Math.PI * corner.value), "H");
    var preferred = neighbours(capacitor.value).map(function (one) { return said(one, "F") + " gives " + said(capacitorFor(ohms.value, one), "Hz"); });
    return {
      frequency: corner.value, capacitance: capacitor.value, inductance: coil.value,
      headline: corner.text + " at " + ohms.text + ": " + capacitor.text + " in series for a high-pass, " + coil.text + " in series for a low-pass",
      numbers: [corner, ohms, capacitor, coil], notes: ["next preferred values: " + preferred.join(", ")].concat(FILTER_NOTES),
    };
  }

  function filterOfCapacitor(asked) {
    var capacitor = given("capacitance", asked.capacitance);
    var ohms = given("load", asked.load);
    var corner = number("frequency", 1 / (2 * Math.PI * ohms.value * capacitor.value), "Hz");
    return {
      frequency: corner.value, capacitance: capacitor.value, inductance: null,
      headline: capacitor.text + " in series with " + ohms.text + ": a high-pass at " + corner.text,
      numbers: [capacitor, ohms, corner], notes: FILTER_NOTES,
    };
  }

  function filterOfCoil(asked) {
    var coil = given("inductance", asked.inductance);
    var ohms = given("load", asked.load);
    var corner = number("frequency", ohms.value / (2 * Math.PI * coil.value), "Hz");
    return {
      frequency: corner.value, capacitance: null, inductance: coil.value,
      headline: coil.text + " in series with " + ohms.text + ": a low-pass at " + corner.text,
      numbers: [coil, ohms, corner], notes: FILTER_NOTES,
    };
  }

  /* levels */

  function gain(asked) {
    var watts = given("power", asked.power);
    var ohms = given("load", asked.load);
    var volts = number("output voltage", Math.sqrt(watts.value * ohms.value), "V");
    return {
      volts: volts.value, headline: watts.text + " into " + ohms.text + ": " + volts.text + " RMS", numbers: [watts, ohms, volts],
      notes: [
        "set with a steady sine at full level, tone controls flat, speakers taken off (common practice)",
        "for music below full level turn up no further: a signal that clips harms speakers at any voltage",
      ],
    };
  }

  function level(decibels, voltage, power, before) {
    var numbers = [decibels, number("voltage", voltage, "times"), number("power", power, "times")];
    return {
      decibels: decibels.value, voltage: voltage, power: power,
      headline: decibels.text + ": voltage " + numbers[1].text + ", power " + numbers[2].text,
      numbers: before.concat(numbers), notes: [],
    };
  }

  function change(asked) {
    var decibels = given("level", asked.decibels);
    return level(decibels, Math.pow(10, decibels.value / 20), Math.pow(10, decibels.value / 10), []);
  }

  function ratio(asked) {
    var one = given("signal", asked.voltage, "voltage");
    var other = given("signal", asked.against, "voltage to compare with");
    var times = one.value / other.value;
    return level(number("level", 20 * Math.log10(times), "dB"), times, times * times, [one, other]);
  }

  /* delay and rest */

  function speedOfSound(celsius) {
    var sound = tables.defaults.sound;
    return sound.speed * Math.sqrt((celsius + 273.15) / (sound.at + 273.15));
  }

  function delays(asked) {
    var count = asked.distances.length;
    if (count < 2 || count > 32) throw new Refused(count + " distances make no delay", "give from 2 to 32, one for each speaker");
    var ways = asked.distances.map(function (one, place) { return given("distance", one, "distance " + (place + 1)); });
    var air = orUsual("air", asked.air, "air");
    var speed = speedOfSound(air.value);
    var far = Math.max.apply(null, asked.distances);
    var waits = asked.distances.map(function (one, place) { return number("delay " + (place + 1), (far - one) / speed, "s"); });
    return {
      seconds: waits.map(function (wait) { return wait.value; }), speed: speed,
      headline: "delays: " + waits.map(function (wait) { return wait.text; }).join(", "),
      numbers: ways.concat([air, number("speed of sound", speed, "m/s", "ISO 9613-1 (secondary)")], waits),
      notes: ["measure from the middle of each cone to where the head is; the ear has the last word (common practice)"],
    };
  }

  function rest(asked) {
    var battery = given("capacity", asked.capacity);
    var drawn = given("rest", asked.current);
    var part = orUsual("share", asked.share, "rest_share", "share of the capacity");
    var days = number("time", battery.value * part.value / drawn.value / 24, "days");
    var notes = ["read the current after all modules sleep: 20 to 60 min (common practice)"];
    if (drawn.value > usual("rest_limit") * (1 + SLACK)) {
      notes.push("more than the usual " + said(usual("rest_limit"), "A") + " (common practice; some cars draw more by design): look for what stays awake");
    }
    return {
      days: days.value, headline: days.text + " until " + part.text + " of " + battery.text + " is gone at " + drawn.text,
      numbers: [battery, drawn, part, days], notes: notes,
    };
  }

  var api = {
    use: use, Refused: Refused, shown: shown, said: said, diameter: diameter, size: size, sizes: sizes, ampacity: ampacity,
    supply: supply, drop: drop, cable: cable, readings: readings, wired: wired, arranged: arranged,
    filterAt: filterAt, filterOfCapacitor: filterOfCapacitor, filterOfCoil: filterOfCoil,
    gain: gain, change: change, ratio: ratio, delays: delays, rest: rest,
  };

  if (typeof window !== "undefined") {
    window.undertrimElectrical = api;
    var holder = document.getElementById("ut-electrical");
    if (holder) use(JSON.parse(holder.textContent));
  }
  if (typeof module !== "undefined" && module.exports) module.exports = api;
})();
