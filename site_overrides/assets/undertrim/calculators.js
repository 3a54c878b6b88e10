/* The forms of the calculators' page: reads what was typed, asks undertrimElectrical, shows its answer with every number used. */
(function () {
  "use strict";

  var api = window.undertrimElectrical;
  var page = document.querySelector(".ut-calculators");
  if (!api || !page) return;

  function Incomplete(what) { this.what = what; }

  function typed(form, name) { return form.elements[name].value.trim(); }

  function labelOf(form, name) { return form.elements[name].labels[0].textContent; }

  function unitOf(form, name) {
    var choice = form.elements[name + "-unit"];
    return choice ? choice.selectedOptions[0] : form.elements[name].parentElement.querySelector(".ut-unit");
  }

  function toNumber(text, label) {
    if (!/^[-−+]?([0-9]+(\.[0-9]*)?|\.[0-9]+)$/.test(text)) {
      throw new api.Refused("'" + text + "' in '" + label + "' is not a number", "write digits, with a point for decimals");
    }
    return Number(text.replace("−", "-"));
  }

  function toSI(text, label, unit) {
    var value = toNumber(text, label);
    return unit ? value * Number(unit.dataset.scale) + Number(unit.dataset.offset) : value;
  }

  /* A field in SI units; undefined where it is empty or not shown. */
  function maybe(form, name) {
    var text = typed(form, name);
    return text === "" || form.elements[name].closest("[hidden]") ? undefined : toSI(text, labelOf(form, name), unitOf(form, name));
  }

  function needed(form, name) {
    var value = maybe(form, name);
    if (value === undefined) throw new Incomplete(labelOf(form, name));
    return value;
  }

  function chosen(form, name) { return form.elements[name].value; }

  function current(form) {
    var amps = maybe(form, "current");
    var watts = maybe(form, "power");
    if (amps !== undefined && watts !== undefined) throw new api.Refused("both a current and a power are given", "empty one of them");
    if (amps === undefined && watts === undefined) throw new Incomplete("Current or power");
    if (amps !== undefined) return { amps: amps, answers: [] };
    var source = api.supply({ power: watts, efficiency: maybe(form, "efficiency"), voltage: maybe(form, "voltage") });
    return { amps: source.current, answers: [source] };
  }

  var WAYS = {
    same: function () { return null; },
    wire: function (form) { return needed(form, "back"); },
    body: function () { return "body"; },
  };

  function cable(form) {
    var source = current(form);
    var path = {
      current: source.amps, out: needed(form, "out"), back: WAYS[chosen(form, "way")](form), body: maybe(form, "body"),
      metal: chosen(form, "metal"), voltage: maybe(form, "voltage"), conductor: maybe(form, "conductor"),
    };
    var bears = chosen(form, "insulation");
    var wishes = {
      scheme: chosen(form, "scheme"), insulation: bears ? Number(bears) : undefined, place: chosen(form, "place"),
      limit: maybe(form, "limit"), fuse: maybe(form, "fuse"), share: maybe(form, "share"),
    };
    var answer = api.cable({ path: path, wishes: wishes });
    answer.scheme = wishes.scheme;
    return source.answers.concat([answer]);
  }

  var CORNERS = {
    frequency: function (value, load) { return api.filterAt({ frequency: value, load: load }); },
    capacitance: function (value, load) { return api.filterOfCapacitor({ capacitance: value, load: load }); },
    inductance: function (value, load) { return api.filterOfCoil({ inductance: value, load: load }); },
  };

  function level(form) {
    if (typed(form, "decibels")) return api.change({ decibels: needed(form, "decibels") });
    return api.ratio({ voltage: needed(form, "voltage"), against: needed(form, "against") });
  }

  function delay(form) {
    var unit = unitOf(form, "distances");
    var label = labelOf(form, "distances");
    var texts = typed(form, "distances").split(/[\s;]+/).filter(Boolean);
    if (texts.length < 2) throw new Incomplete("two distances or more");
    return api.delays({ distances: texts.map(function (text) { return toSI(text, label, unit); }), air: maybe(form, "air") });
  }

  function load(form) {
    var text = typed(form, "text");
    if (!text) throw new Incomplete(labelOf(form, "text"));
    return api.arranged({ text: text, least: maybe(form, "least") });
  }

  function colour(form) {
    if (!chosen(form, "colour")) throw new Incomplete("Colour");
    return api.readings({ colour: chosen(form, "colour") });
  }

  var CALCULATORS = {
    cable: cable,
    load: load,
    filter: function (form) { return CORNERS[unitOf(form, "value").dataset.kind](needed(form, "value"), needed(form, "load")); },
    gain: function (form) { return api.gain({ power: needed(form, "power"), load: needed(form, "load") }); },
    level: level,
    delay: delay,
    rest: function (form) { return api.rest({ capacity: needed(form, "capacity"), current: needed(form, "current"), share: maybe(form, "share") }); },
    colour: colour,
  };

  /* what is shown */

  function element(tag, text, className) {
    var made = document.createElement(tag);
    made.textContent = text;
    if (className) made.className = className;
    return made;
  }

  function list(lines) {
    var made = document.createElement("ul");
    lines.forEach(function (line) { made.appendChild(element("li", line)); });
    return made;
  }

  function conditionLine(scheme) {
    return function (one) {
      return one.words + ": " + (one.size === null ? "no size listed" : api.size(scheme, one.size).label + " or thicker");
    };
  }

  function numbers(every) {
    var made = element("dl", "", "ut-facts");
    every.forEach(function (one) {
      var row = document.createElement("div");
      row.appendChild(element("dt", one.label + (one.origin === "given" || one.origin === "computed" ? "" : " (" + one.origin + ")")));
      row.appendChild(element("dd", one.text));
      made.appendChild(row);
    });
    return made;
  }

  function shown(answer) {
    var parts = [element("p", answer.headline, "ut-headline")];
    if (answer.conditions) parts.push(list(answer.conditions.map(conditionLine(answer.scheme))));
    if (answer.notes.length) parts.push(list(answer.notes));
    var folded = document.createElement("details");
    folded.appendChild(element("summary", "Every number used"));
    folded.appendChild(numbers(answer.numbers));
    return parts.concat([folded]);
  }

  function refused(error) {
    if (error instanceof api.Refused) return [element("p", error.message, "ut-refused"), element("p", error.hint)];
    if (error instanceof Incomplete) return [element("p", "Still needed: " + error.what.toLowerCase())];
    throw error;
  }

  function answered(form) {
    try {
      return [].concat.apply([], [].concat(CALCULATORS[form.dataset.calculator](form)).map(shown));
    } catch (error) {
      return refused(error);
    }
  }

  function showFields(form) {
    if (!form.elements.way) return;
    var way = chosen(form, "way");
    form.elements.back.closest(".ut-field").hidden = way !== "wire";
    form.elements.body.closest(".ut-field").hidden = way !== "body";
    form.elements.efficiency.closest(".ut-field").hidden = !typed(form, "power");
  }

  function untouched(form) {
    var asked = form.querySelectorAll("input").length ? "input" : "select";
    return Array.prototype.every.call(form.querySelectorAll(asked), function (one) { return !one.value; });
  }

  function update(form) {
    var output = form.querySelector("output");
    var open = output.querySelector("details[open]") !== null;
    showFields(form);
    output.hidden = untouched(form);
    output.replaceChildren.apply(output, output.hidden ? [] : answered(form));
    output.querySelectorAll("details").forEach(function (one) { one.open = open; });
  }

  page.classList.add("ut-live");
  page.querySelectorAll("form").forEach(function (form) {
    form.closest("section").hidden = false;
    form.addEventListener("submit", function (event) { event.preventDefault(); });
    form.addEventListener("input", function () { update(form); });
    update(form);
  });
})();
