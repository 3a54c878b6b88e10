/* Says which function a meter's readings agree with, what to measure next, and which button a resistance is.
   The table is data/functions.toml. The logic is that of derive/wiring: tests/vectors/meter.py runs in both. */
(function () {
  "use strict";

  var LONGEST = 60;
  var SPACE = /[ \t\n\r\f\v\u00a0]+/g;
  var UNSHOWN = /[\u0000-\u001f\u007f-\u009f\u2028\u2029]/g;
  var NUMBER = /^([+\-−]?)([0-9]+(?:\.[0-9]+)?|\.[0-9]+) ?(.*)$/s;
  var COMMA = /^[+\-−]?[0-9]+,[0-9].*$/s;
  var MARKS = /[ ,;:()]+/;
  var STANDINGS = ["agrees", "open", "disagrees"];

  function lower(text) {
    return text.replace(/[A-Z]/g, function (letter) { return letter.toLowerCase(); });
  }

  function has(list, item) {
    return list.indexOf(item) >= 0;
  }

  /* ---- reading what was typed ---- */

  function shown(text) {
    var letters = Array.from(text.replace(UNSHOWN, "?"));
    return letters.length > 40 ? letters.slice(0, 39).join("") + "…" : letters.join("");
  }

  function refuse(table, id, text, word) {
    var row = table.problem[id];
    var states = Object.keys(table.state).map(function (name) { return table.state[name].says[0]; }).join(", ");
    function filled(template) {
      return [["{states}", states], ["{word}", shown(word || "")], ["{text}", shown(text)]].reduce(function (made, pair) {
        return made.split(pair[0]).join(pair[1]);
      }, template);
    }
    throw { id: id, message: filled(row.message), hint: filled(row.hint) };
  }

  /* One reading; throws {id, message, hint} for a text that is none. */
  function read(table, text) {
    var tidied = text.replace(SPACE, " ").replace(/^ +| +$/g, "");
    if (!tidied) refuse(table, "empty", tidied);
    if (Array.from(tidied).length > LONGEST) refuse(table, "too-long", tidied);
    var first = tidied.split(" ")[0];
    if (has(table.grammar.open, lower(first))) {
      return finished(table, tidied, { measures: "ohm", ten: 0 }, Infinity, 0, tidied.slice(first.length + 1));
    }
    return withNumber(table, tidied);
  }

  function withNumber(table, text) {
    if (COMMA.test(text)) refuse(table, "comma", text);
    var found = NUMBER.exec(text);
    if (!found) refuse(table, "no-number", text);
    var rest = found[3];
    var spelling = rest.split(/[ ,;]/)[0];
    var unit = unitOf(table, spelling);
    if (!unit) refuse(table, spelling ? "unknown-unit" : "no-unit", text, spelling);
    var sign = found[1] === "-" || found[1] === "−" ? "-" : "";
    var value = Number(sign + found[2] + "e" + unit.ten) + 0;
    var step = Number("5e" + (unit.ten - (found[2].split(".")[1] || "").length - 1));
    return finished(table, text, unit, value, step, rest.slice(spelling.length));
  }

  function unitOf(table, spelling) {
    return table.unit.filter(function (row) { return has(row.exact, spelling) || has(row.any_case, lower(spelling)); })[0];
  }

  function finished(table, text, unit, value, step, rest) {
    var grammar = table.grammar;
    var tokens = lower(rest).split(MARKS).filter(function (token) { return token && !has(grammar.filler, token); });
    function says(list) { return tokens.some(function (token) { return has(list, token); }); }
    var said = grammar.ac.concat(grammar.dc, grammar.pair, grammar.ground);
    var named = statesOf(table, text, tokens.filter(function (token) { return !has(said, token); }));
    var kind = kindOf(table, text, unit, says(grammar.ac), says(grammar.dc), says(grammar.pair));
    if (value < 0 && kind !== "volts") refuse(table, "negative", text);
    return { text: text, kind: kind, state: stateOf(table, text, named, kind), value: value, step: step };
  }

  function phrases(table) {
    var made = new Map();
    Object.keys(table.state).forEach(function (name) {
      table.state[name].says.forEach(function (phrase) {
        made.set(phrase.split(" ").filter(function (word) { return !has(table.grammar.filler, word); }).join(" "), name);
      });
    });
    return made;
  }

  function statesOf(table, text, tokens) {
    var known = phrases(table);
    var found = [];
    while (tokens.length) {
      var size = tokens.length;
      while (size && !known.has(tokens.slice(0, size).join(" "))) size -= 1;
      if (!size) refuse(table, "unknown-state", text, tokens.join(" "));
      found.push(known.get(tokens.slice(0, size).join(" ")));
      tokens = tokens.slice(size);
    }
    return found;
  }

  function kindOf(table, text, unit, saidAc, saidDc, pair) {
    var ac = unit.ac || saidAc;
    if (ac && (unit.dc || saidDc)) refuse(table, "ac-dc", text);
    if (unit.measures === "ohm") {
      if (ac) refuse(table, "ac-ohms", text);
      return pair ? "pair" : "ohms";
    }
    if (pair && !ac) refuse(table, "pair-volts", text);
    return ac ? "ac" : "volts";
  }

  function stateOf(table, text, named, kind) {
    if (!named.length) {
      if (table.kind[kind].dead) return "key-off";
      refuse(table, "no-state", text);
    }
    var found = named.filter(function (name) {
      return named.every(function (other) { return other === name || has(table.state[name].beside, other); });
    })[0];
    if (!found) refuse(table, "two-states", text);
    return found;
  }

  /* ---- what readings say of a function ---- */

  function bandOf(table, pattern, kind, state, supply) {
    if (table.kind[kind].dead && !table.state[state].ohms) return null;
    var named = table.pattern[pattern][kind] || {};
    var id = named[state] || named.always;
    if (!id) return null;
    var row = table.band[id];
    if (supply !== null && supply !== undefined && row.of_battery && id !== "between") {
      return { id: id, words: "its supply of " + supply + " V", low: supply * 0.85, high: supply * 1.1, sure: "practice" };
    }
    return { id: id, words: row.words, low: row.low, high: "high" in row ? row.high : Infinity, sure: row.sure };
  }

  function inside(reading, band) {
    return reading.value + reading.step >= band.low && reading.value - reading.step <= band.high;
  }

  function isLive(table, reading) {
    return reading.kind === "volts" && !inside(reading, table.band.zero);
  }

  function hasVoltage(table, readings) {
    return readings.some(function (reading) { return table.state[reading.state].rest && isLive(table, reading); });
  }

  function judge(table, pattern, reading, supply, live) {
    var nothing = { verdict: "nothing", band: null, sure: "", why: "" };
    var dead = table.kind[reading.kind].dead;
    if (dead && !table.state[reading.state].ohms) return Object.assign(nothing, { why: "power" });
    if (dead && live) return Object.assign(nothing, { why: "live" });
    var band = bandOf(table, pattern, reading.kind, reading.state, supply);
    if (!band) return nothing;
    var weaker = Math.max(table.order.indexOf(table.pattern[pattern].sure), table.order.indexOf(band.sure));
    return { verdict: inside(reading, band) ? "agrees" : "disagrees", band: band, sure: table.order[weaker], why: "" };
  }

  function findings(table, pattern, readings, supply) {
    var live = hasVoltage(table, readings);
    return readings.map(function (reading) { return judge(table, pattern, reading, supply, live); });
  }

  function count(found, verdict) {
    return found.filter(function (finding) { return finding.verdict === verdict; }).length;
  }

  function candidate(name, pattern, found) {
    var agreeing = count(found, "agrees");
    var disagreeing = count(found, "disagrees");
    var standing = disagreeing ? "disagrees" : agreeing ? "agrees" : "open";
    return { function: name, pattern: pattern, findings: found, agreeing: agreeing, disagreeing: disagreeing, standing: standing };
  }

  /* One function by the pattern of it that the readings suit best; behaves and supply are what a record says of the pin. */
  function consider(table, name, readings, behaves, supply) {
    var known = behaves && behaves !== "unknown";
    var tried = table.function[name].patterns.filter(function (pattern) {
      var own = table.pattern[pattern].behaves;
      return (!known || !own.length || has(own, behaves)) && proved(table, pattern, readings);
    }).map(function (pattern) { return candidate(name, pattern, findings(table, pattern, readings, supply)); });
    if (!tried.length) {
      return candidate(name, null, readings.map(function () { return { verdict: "nothing", band: null, sure: "", why: "" }; }));
    }
    return tried.reduce(function (best, one) { return better(one, best) ? one : best; });
  }

  /* Whether the state was read without which a pattern looks like another function's. */
  function proved(table, pattern, readings) {
    var needed = table.pattern[pattern].needs;
    return !needed || readings.some(function (reading) { return reading.state === needed; });
  }

  function better(one, best) {
    return one.disagreeing < best.disagreeing || (one.disagreeing === best.disagreeing && one.agreeing > best.agreeing);
  }

  /* Every function, the best first. */
  function weigh(table, readings) {
    return Object.keys(table.function).map(function (name) { return consider(table, name, readings); }).sort(function (a, b) {
      return STANDINGS.indexOf(a.standing) - STANDINGS.indexOf(b.standing) || a.disagreeing - b.disagreeing || b.agreeing - a.agreeing;
    });
  }

  /* ---- what to measure next ---- */

  function owners(table, pattern) {
    return Object.keys(table.function).filter(function (name) { return has(table.function[name].patterns, pattern); });
  }

  function untried(table, readings, ohms) {
    var keyOff = readings.some(function (reading) { return reading.kind === "volts" && reading.state === "key-off"; });
    var dead = ohms && keyOff && !hasVoltage(table, readings);
    var found = [];
    Object.keys(table.kind).forEach(function (kind) {
      if (table.kind[kind].dead && !dead) return;
      Object.keys(table.state).forEach(function (state) {
        var taken = readings.some(function (reading) { return reading.kind === kind && reading.state === state; });
        if (!taken) found.push([kind, state]);
      });
    });
    return found;
  }

  function leadingOf(table, remaining, readings, about) {
    var own = remaining.filter(function (pattern) { return about && has(table.function[about].patterns, pattern); });
    if (own.length) return own;
    var agreeing = remaining.map(function (pattern) { return count(findings(table, pattern, readings), "agrees"); });
    var most = Math.max.apply(null, agreeing);
    return remaining.filter(function (_, index) { return agreeing[index] === most; });
  }

  function attempt(table, kind, state, remaining, leading) {
    var known = remaining.map(function (pattern) { return { pattern: pattern, band: bandOf(table, pattern, kind, state) }; })
      .filter(function (item) { return item.band; });
    var score = [0, 0];
    known.forEach(function (a, index) {
      known.slice(index + 1).forEach(function (b) {
        if (!has(leading, a.pattern) && !has(leading, b.pattern)) return;
        if (!(a.band.high < b.band.low || b.band.high < a.band.low)) return;
        score[1] += 1;
        if (owners(table, a.pattern).join() !== owners(table, b.pattern).join()) score[0] += 1;
      });
    });
    return { score: score, next: { kind: kind, state: state, outcomes: outcomes(table, known) } };
  }

  function outcomes(table, known) {
    return Object.keys(table.band).map(function (id) {
      var here = known.filter(function (item) { return item.band.id === id; });
      var names = Object.keys(table.function).filter(function (name) {
        return here.some(function (item) { return has(table.function[name].patterns, item.pattern); });
      });
      return here.length ? { band: here[0].band, functions: names } : null;
    }).filter(Boolean);
  }

  /* The reading that tells the leading patterns best from the others; null if none does for certain. */
  function next(table, readings, about) {
    var remaining = Object.keys(table.pattern).filter(function (pattern) {
      return !count(findings(table, pattern, readings), "disagrees");
    });
    var leading = leadingOf(table, remaining, readings, about);
    var known = remaining.some(function (pattern) { return about && has(table.function[about].patterns, pattern); });
    var tried = untried(table, readings, known).map(function (one) { return attempt(table, one[0], one[1], remaining, leading); });
    return bestBy(tried, 0) || bestBy(tried, 1);
  }

  /* The first reading whose score is nearly the best; null where all of them are 0. */
  function bestBy(tried, index) {
    var most = Math.max.apply(null, tried.map(function (one) { return one.score[index]; }).concat(0));
    return most ? tried.filter(function (one) { return one.score[index] * 5 >= most * 4; })[0].next : null;
  }

  /* ---- what readings can be besides the functions of a radio ---- */

  /* `recorded` is what consider() made of the record's function, null for an unknown wire. */
  function suspicions(table, readings, recorded) {
    return Object.keys(table.suspect).map(function (id) {
      var row = table.suspect[id];
      var texts = readings.filter(function (reading, index) {
        return brings(table, row, reading) && holds(table, row, readings, recorded, index);
      }).map(function (reading) { return reading.text; });
      return { id: id, words: row.words, do: row.do, stop: Boolean(row.stop), readings: texts };
    }).filter(function (one) { return one.readings.length; });
  }

  function brings(table, row, reading) {
    var stated = !row.states || has(row.states, reading.state);
    return stated && (row.reads[reading.kind] || []).some(function (id) {
      var band = table.band[id];
      return inside(reading, { low: band.low, high: "high" in band ? band.high : Infinity });
    });
  }

  function holds(table, row, readings, recorded, index) {
    if (row.dead && readings.some(function (reading) { return isLive(table, reading); })) return false;
    if (row.where === "instead") return Boolean(recorded) && instead(table, row, recorded, recorded.findings[index]);
    if (row.where === "unrecorded") return !recorded;
    if (row.where === "lone") {
      return !(recorded && recorded.standing === "agrees") && weigh(table, readings)[0].standing === "disagrees";
    }
    return !recorded || recorded.findings[index].verdict !== "agrees";
  }

  function instead(table, row, recorded, finding) {
    var concerned = !row.groups || has(row.groups, table.function[recorded.function].group);
    return concerned && finding.verdict === "disagrees" && Boolean(finding.band) && has(row.expects, finding.band.id);
  }

  /* ---- ladders: the bands come from the record, lowest first ---- */

  function place(rungs, ohms) {
    function high(rung) { return rung.high === null ? Infinity : rung.high; }
    var holding = rungs.filter(function (rung) { return rung.low <= ohms && ohms <= high(rung); });
    if (holding.length) {
      var kind = holding.length > 1 ? "ambiguous" : holding[0].idle ? "idle" : "button";
      return { kind: kind, rungs: holding, below: null, above: null };
    }
    var below = rungs.filter(function (rung) { return high(rung) < ohms; });
    var above = rungs.filter(function (rung) { return rung.low > ohms; });
    return {
      kind: "none", rungs: [],
      below: below.reduce(function (best, rung) { return !best || high(rung) > high(best) ? rung : best; }, null),
      above: above.reduce(function (best, rung) { return !best || rung.low < best.low ? rung : best; }, null)
    };
  }

  /* ---- words ---- */

  function figures(value) {
    return value.toFixed(2).replace(/\.?0+$/, "").replace("-", "−");
  }

  function measured(value, unit) {
    if (unit === "ohm" && Math.abs(value) >= 1e6) return figures(value / 1e6) + " Mohm";
    if (unit === "ohm" && Math.abs(value) >= 1e3) return figures(value / 1e3) + " kohm";
    return figures(value) + " " + unit;
  }

  function ranged(band, unit) {
    if (band.high === null || band.high === Infinity) return measured(band.low, unit) + " and up";
    return measured(band.low, unit) + " to " + measured(band.high, unit);
  }

  function names(table, found) {
    var said = {};
    found.forEach(function (name) { said[name] = table.function[name].words; });
    Object.keys(table.together).forEach(function (group) {
      var whole = Object.keys(table.function).filter(function (name) { return table.function[name].group === group; });
      if (whole.every(function (name) { return name in said; })) {
        whole.forEach(function (name) { said[name] = table.together[group]; });
      }
    });
    return Array.from(new Set(found.map(function (name) { return said[name]; }))).join(", ");
  }

  window.undertrimMeter = {
    read: read, weigh: weigh, consider: consider, next: next, place: place, suspicions: suspicions,
    measured: measured, ranged: ranged, names: names
  };
})();
