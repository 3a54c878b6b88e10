/* Finds a vehicle by make, model and year, month or range typed in any order. The index comes as scripts that call undertrimFinder(). */
(function () {
  "use strict";

  var rows = [];
  var pieces = {}; // piece name -> words by which something in it can be found
  var asked = {}; // pieces that are on their way or here
  var active = -1;
  var MOST_SHOWN = 20;

  var box = document.getElementById("ut-finder");
  var input = document.getElementById("ut-query");
  var list = document.getElementById("ut-found");
  var said = document.getElementById("ut-said");
  var base = document.currentScript.src.replace(/assets\/undertrim\/finder\.js.*$/, "");
  if (!box) return;

  function fold(text) {
    return text.normalize("NFKD").replace(/[\u0300-\u036f]/g, "").toLowerCase();
  }

  /* A name three ways: its words, its pieces between letters and digits, and all joined: "C-8" is c-8, c, 8 and c8. */
  function forms(name) {
    var folded = fold(name);
    var words = folded.split(/\s+/);
    var parts = folded.match(/[a-z]+|\d+|[^\sa-z\d-]+/g) || [];
    return words.concat(parts, [folded.replace(/[^a-z0-9]+/g, ""), folded]);
  }

  function prepared(row) {
    var names = [row[1], row[2]].concat(row[6]);
    return { row: row, forms: [].concat.apply([], names.map(forms)) };
  }

  window.undertrimFinder = function (name, data) {
    if (data.pieces) {
      Object.keys(data.pieces).forEach(function (piece) {
        pieces[piece] = [].concat.apply([], data.pieces[piece].map(forms));
      });
    }
    if (data.rows) rows = rows.concat(data.rows.map(prepared));
    box.hidden = false;
    document.getElementById("ut-noscript").hidden = true;
    show();
  };

  /* How well a token fits: 3 a whole word, 2 its beginning, 1.5 the time, 1 inside, 0.5 one slip of the finger, 0 not at all. */
  function fits(token, item) {
    var best = 0;
    item.forms.forEach(function (form) {
      if (form === token) best = Math.max(best, 3);
      else if (form.indexOf(token) === 0) best = Math.max(best, 2);
      else if (token.length > 2 && form.indexOf(token) > 0) best = Math.max(best, 1);
      else if (token.length > 3 && best < 0.5 && oneSlip(token, form)) best = 0.5;
    });
    if (best < 1.5 && undertrimWhen.holds(undertrimWhen.read(token), item.row)) best = 1.5;
    return best;
  }

  function oneSlip(token, form) {
    if (Math.abs(token.length - form.length) > 1) return false;
    var i = 0;
    while (i < token.length && token[i] === form[i]) i += 1;
    var a = token.slice(i);
    var b = form.slice(i);
    return a.slice(1) === b.slice(1) || a.slice(1) === b || a === b.slice(1) ||
      (a[0] === b[1] && a[1] === b[0] && a.slice(2) === b.slice(2));
  }

  function tokens() {
    return undertrimWhen.split(fold(input.value));
  }

  function search(wanted) {
    var hits = [];
    rows.forEach(function (item) {
      var score = 0;
      for (var i = 0; i < wanted.length; i += 1) {
        var one = fits(wanted[i], item);
        if (!one) return;
        score += one;
      }
      hits.push({ item: item, score: score });
    });
    hits.sort(function (a, b) {
      return b.score - a.score || a.item.row[1].localeCompare(b.item.row[1]) ||
        a.item.row[2].localeCompare(b.item.row[2]) || b.item.row[4] - a.item.row[4];
    });
    return hits;
  }

  /* In a large collection: ask for the pieces in which every word that is no year occurs. */
  function fetchPieces(wanted) {
    var words = wanted.filter(function (token) { return !undertrimWhen.read(token).length && token.length > 1; });
    if (!words.length) return 0;
    var near = Object.keys(pieces).filter(function (piece) {
      return words.every(function (token) {
        return pieces[piece].some(function (form) { return form.indexOf(token) === 0; });
      });
    });
    near.slice(0, 6).forEach(function (piece) {
      if (asked[piece]) return;
      asked[piece] = "coming";
      var script = document.createElement("script");
      script.src = base + "finder/" + piece + ".js";
      script.onload = function () { asked[piece] = "here"; show(); };
      script.onerror = function () { asked[piece] = ""; said.textContent = "Part of the list could not be loaded. Try again."; };
      document.head.appendChild(script);
    });
    return near.filter(function (piece) { return asked[piece] === "coming"; }).length;
  }

  function entry(hit, index) {
    var row = hit.item.row;
    var option = document.createElement("li");
    option.setAttribute("role", "none");
    var link = document.createElement("a");
    link.setAttribute("role", "option"); // the link itself: nothing to press may stand inside an option
    link.id = "ut-found-" + index;
    link.href = base + "vehicles/" + row[0].split("/").map(encodeURIComponent).join("/") + ".html";
    link.tabIndex = -1;
    var name = document.createElement("b");
    name.textContent = row[1] + " " + row[2];
    var years = document.createElement("span");
    years.className = "ut-years";
    years.textContent = (row[3] === row[4] ? String(row[3]) : row[3] + "–" + row[4]) + (row[5] ? " " + row[5] : "");
    link.append(name, " ", years);
    option.appendChild(link);
    return option;
  }

  /* A time that no record covers is not a slip of the finger: what there is without it is said. */
  function whyNone(wanted) {
    var times = wanted.filter(function (token) { return undertrimWhen.read(token).length; });
    var names = wanted.filter(function (token) { return !undertrimWhen.read(token).length; });
    if (Object.keys(pieces).length && !names.length) return "Type a make or model.";
    var without = times.length ? search(names).map(function (hit) { return hit.item.row; }) : [];
    if (without.length) {
      var failing = times.find(function (token) { return !without.some(function (row) { return undertrimWhen.holds(undertrimWhen.read(token), row); }); });
      return undertrimWhen.recorded(without, undertrimWhen.read(failing || times[0]));
    }
    var odd = names.filter(function (token) { return /^'?\d{1,4}[./–—-]\d/.test(token); });
    if (odd.length && search(names.filter(function (token) { return odd.indexOf(token) < 0; })).length) {
      return "Not read as a year or a month: " + odd.join(" ") + ". Type 2016, 16, 2016-05, 05/2016 or 2014-2018.";
    }
    return "Not in these records. Check the spelling, or pick the make below.";
  }

  function show() {
    var wanted = tokens();
    active = -1;
    list.textContent = "";
    if (!wanted.length) {
      said.textContent = "";
      input.setAttribute("aria-expanded", "false");
      input.removeAttribute("aria-activedescendant");
      return;
    }
    var coming = fetchPieces(wanted);
    var hits = search(wanted);
    hits.slice(0, MOST_SHOWN).forEach(function (hit, index) { list.appendChild(entry(hit, index)); });
    input.setAttribute("aria-expanded", hits.length ? "true" : "false");
    if (hits.length > MOST_SHOWN) said.textContent = hits.length + " vehicles; the first " + MOST_SHOWN + " are shown. Type more.";
    else if (hits.length) said.textContent = hits.length === 1 ? "1 vehicle" : hits.length + " vehicles";
    else if (coming) said.textContent = "Looking…";
    else said.textContent = whyNone(wanted);
    if (hits.length) mark(0);
  }

  function mark(index) {
    var options = list.children;
    if (options[active]) options[active].firstChild.removeAttribute("aria-selected");
    active = Math.max(0, Math.min(index, options.length - 1));
    if (options[active]) {
      options[active].firstChild.setAttribute("aria-selected", "true");
      options[active].scrollIntoView({ block: "nearest" });
      input.setAttribute("aria-activedescendant", options[active].firstChild.id);
    }
  }

  input.addEventListener("input", show);
  input.addEventListener("keydown", function (event) {
    if (event.key === "ArrowDown" || event.key === "ArrowUp") {
      event.preventDefault();
      mark(active + (event.key === "ArrowDown" ? 1 : -1));
    } else if (event.key === "Enter" && list.children[active]) {
      event.preventDefault();
      list.children[active].querySelector("a").click();
    } else if (event.key === "Escape") {
      input.value = "";
      show();
    }
  });
})();
