/* The meter guide of a plug: pick pin and state, type a reading, see what it agrees with and what to measure next.
   Each guide is a `.ut-meter` with its plug as JSON; meter.js has the logic. Either the page holds the table in
   `#ut-meter-table`, or a script after this one calls undertrimMeter.start() with it. */
(function () {
  "use strict";

  var meter = window.undertrimMeter;

  var WHY = {
    "": "says nothing about this function",
    power: "says nothing: ohms count with the power off alone",
    live: "says nothing: the wire had voltage with the key off, and ohms count on a dead wire alone"
  };
  var SAID = { agrees: "Agrees: ", disagrees: "Disagrees: ", nothing: "No answer: " };
  var RECORD = {
    agrees: "The readings agree with the record: ",
    open: "The readings say nothing about the record: ",
    disagrees: "The readings disagree with the record: "
  };

  function make(tag, text, className) {
    var made = document.createElement(tag);
    if (text) made.textContent = text;
    if (className) made.className = className;
    return made;
  }

  function listOf(lines) {
    var list = make("ul");
    lines.forEach(function (line) { list.appendChild(make("li", line)); });
    return list;
  }

  function reason(table, reading, finding) {
    var kind = table.kind[reading.kind];
    if (!finding.band) return SAID[finding.verdict] + reading.text + " " + WHY[finding.why] + ".";
    return SAID[finding.verdict] + reading.text + ". Expected, " + kind.words + ", " + table.state[reading.state].words + ": " +
      finding.band.words + ", " + meter.ranged(finding.band, kind.unit) + " (" + table.sure[finding.sure] + ").";
  }

  function grouped(table, found) {
    var alike = {};
    found.forEach(function (one) { (alike[one.pattern] = alike[one.pattern] || []).push(one.function); });
    return Object.keys(alike).map(function (pattern) { return meter.names(table, alike[pattern]) + ": " + table.pattern[pattern].words; });
  }

  function results(table, readings, pin) {
    var recorded = pin ? meter.consider(table, pin.function, readings, pin.behaves, pin.supply) : null;
    var found = meter.suspicions(table, readings, recorded);
    var stops = found.filter(function (one) { return one.stop; });
    var parts = stops.map(function (one) {
      return make("p", "STOP: " + one.readings.join(", ") + " may be " + one.words + ". " + one.do, "ut-stop");
    });
    if (recorded && readings.length) {
      parts.push(make("p", RECORD[recorded.standing] + pin.words + ".", "ut-standing"));
      parts.push(listOf(readings.map(function (reading, index) { return reason(table, reading, recorded.findings[index]); })));
    } else if (recorded) {
      parts.push(make("p", "By the record: " + pin.words + "."));
    }
    var named = [alsoMaybe(found), readings.length ? others(table, meter.weigh(table, readings), recorded) : []];
    if (stops.length) named.reverse(); // a speaker comes second behind an igniter
    return parts.concat(
      named[0], named[1],
      stops.length ? [make("p", "Measure nothing more on this wire: look it up in the maker's information.")] : asking(table, readings, pin)
    );
  }

  function alsoMaybe(found) {
    var lines = found.filter(function (one) { return !one.stop; }).map(function (one) {
      return one.words + " (" + one.readings.join(", ") + "): " + one.do;
    });
    return lines.length ? [make("p", "It may also be:"), listOf(lines)] : [];
  }

  function others(table, found, recorded) {
    var rest = found.filter(function (one) { return !recorded || one.function !== recorded.function; });
    var agreeing = rest.filter(function (one) { return one.standing === "agrees"; });
    if (agreeing.length) {
      return [make("p", recorded ? "Other functions that the readings agree with:" : "The readings agree with:"), listOf(grouped(table, agreeing))];
    }
    var ruledOut = found[0].standing === "disagrees" && !(recorded && recorded.standing === "agrees");
    return ruledOut ? [make("p", "No function agrees with every reading: take them again.")] : [];
  }

  function asking(table, readings, pin) {
    var asked = meter.next(table, readings, pin && pin.function);
    if (!asked) return [make("p", "No further reading in the table tells for certain what remains: trace the wire.")];
    var kind = table.kind[asked.kind];
    return [make("p", "Measure next: " + kind.words + ", " + table.state[asked.state].words + "."), listOf(asked.outcomes.map(function (outcome) {
      return meter.ranged(outcome.band, kind.unit) + ": " + meter.names(table, outcome.functions);
    }))];
  }

  function rungWords(found) {
    var called = found.rungs.map(function (rung) { return rung.name; }).join(" or ");
    if (found.kind === "ambiguous") return "ambiguous: " + called + ", their bands overlap here";
    if (found.kind !== "none") return "agrees with " + called;
    var between = [];
    if (found.below) between.push("above " + found.below.name + " (to " + meter.measured(found.below.high, "ohm") + ")");
    if (found.above) between.push("below " + found.above.name + " (from " + meter.measured(found.above.low, "ohm") + ")");
    return "none of them: " + (between.join(" and ") || "no band is recorded");
  }

  function pressed(table, plug, pinId, readings) {
    return [].concat.apply([], plug.ladders.filter(function (ladder) { return ladder.pin === pinId; }).map(function (ladder) {
      return readings.filter(function (reading) { return table.kind[reading.kind].dead && table.state[reading.state].ohms; }).map(function (reading) {
        return "Ladder " + ladder.id + (ladder.when ? " (" + ladder.when + ")" : "") + ", " + reading.text + ": " + rungWords(meter.place(ladder.rungs, reading.value)) + ".";
      });
    }));
  }

  function start(table, box) {
    var plug = JSON.parse(box.querySelector("script[type='application/json']").textContent);
    var pick = box.querySelector("[data-meter=pin]");
    var state = box.querySelector("[data-meter=state]");
    var kind = box.querySelector("[data-meter=kind]");
    var value = box.querySelector("[data-meter=value]");
    var out = box.querySelector("[data-meter=out]");
    var taken = box.querySelector("[data-meter=taken]");
    var trouble = box.querySelector("[data-meter=trouble]");
    var readings = [];

    function pin() {
      return plug.pins.filter(function (one) { return one.id === pick.value; })[0] || null;
    }

    function show() {
      var care = pin() ? table.function[pin().function].care : [];
      var buttons = pressed(table, plug, pick.value, readings);
      out.textContent = "";
      /* What holds for every wire stands above the fields; before the next reading comes what holds for this one. */
      var own = care.length ? [listOf(care.map(function (id) { return table.caution[id].text; }))] : [];
      own.concat(results(table, readings, pin()), buttons.length ? [listOf(buttons)] : [])
        .forEach(function (part) { out.appendChild(part); });
      taken.textContent = readings.map(function (reading) { return reading.text; }).join("; ");
    }

    /* The number with what the fields say of it; a unit typed with it counts. */
    function whole() {
      var typed = value.value.trim();
      var bare = /^[+\-−]?[0-9.,]+$/.test(typed);
      var how = { pair: "across the pair", ac: "AC" }[kind.value] || "";
      return [typed, bare ? table.kind[kind.value].unit : "", how, table.state[state.value].says[0]].filter(Boolean).join(" ");
    }

    function add() {
      try {
        readings.push(meter.read(table, whole()));
        trouble.textContent = "";
        value.value = "";
      } catch (error) {
        if (!error.hint) throw error;
        trouble.textContent = error.message + ": " + error.hint;
      }
      show();
    }

    box.querySelector("[data-meter=add]").addEventListener("click", add);
    value.addEventListener("keydown", function (event) { if (event.key === "Enter") { event.preventDefault(); add(); } });
    box.querySelector("[data-meter=clear]").addEventListener("click", function () { readings = []; trouble.textContent = ""; show(); });
    pick.addEventListener("change", function () { readings = []; show(); });
    box.querySelector("[data-meter=form]").hidden = false;
    show();
  }

  function startAll(table) {
    document.querySelectorAll(".ut-meter").forEach(function (box) { start(table, box); });
  }

  meter.start = startAll;
  var holder = document.getElementById("ut-meter-table");
  if (holder) startAll(JSON.parse(holder.textContent));
})();
