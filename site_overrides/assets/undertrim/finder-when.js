/* What is typed of a time: years, months of build and ranges of them. Months are counted from year 0; every span is half-open. */
var undertrimWhen = (function () {
  "use strict";

  function year(text) {
    if (/^(19|20)\d\d$/.test(text)) return Number(text);
    if (!/^'?\d\d$/.test(text)) return null;
    var two = Number(text.slice(-2));
    return two > 60 ? 1900 + two : 2000 + two;
  }

  function month(text) { return /^(0?[1-9]|1[0-2])$/.test(text) ? Number(text) : null; }

  function years(first, last) { return { from: first * 12, to: (last + 1) * 12, months: false, words: first === last ? String(first) : first + " to " + last }; }

  function oneMonth(of, which) {
    var at = of * 12 + which - 1;
    return { from: at, to: at + 1, months: true, words: of + "-" + String(which).padStart(2, "0") };
  }

  /* The times that one word may mean: "16" one, "05-16" two (May 2016, and 2005 to 2016), "finch" none. */
  function read(word) {
    var alone = year(word);
    if (alone !== null) return [years(alone, alone)];
    var parts = word.split(/[-/.–—]/);
    if (parts.length !== 2) return [];
    var first = year(parts[0]), last = year(parts[1]), found = [];
    var monthFirst = month(parts[0]) && parts[1].length === 4; // "04/2016" is April 2016 and not from 2004 on
    if (first !== null && last !== null && first <= last && !monthFirst) found.push(years(first, last));
    if (first !== null && month(parts[1]) && !(found.length && parts[1].length === 4)) found.push(oneMonth(first, month(parts[1])));
    if (last !== null && month(parts[0])) found.push(oneMonth(last, month(parts[0])));
    return found;
  }

  /* Words apart; a month and its year, or two years, stay together: "05 / 2016", "2014 to 2018". */
  function split(text) {
    var joined = text.replace(/(^|[\s,;])('?\d{1,4})\s*(?:[-–—/]|to|until)\s*('?\d{1,4})(?=$|[\s,;])/g, function (all, before, one, other) {
      return read(one + "-" + other).length ? before + one + "-" + other : all;
    });
    return joined.split(/[\s,;/]+/).filter(Boolean);
  }

  function count(text) {
    var parts = text.split("-").map(Number);
    return parts[0] * 12 + parts[1] - 1;
  }

  /* Whether a vehicle is of one of the times: by model years for years, by months of build for months. */
  function holds(times, row) {
    return times.some(function (time) {
      var known = time.months && row[7] ? [count(row[7]), count(row[8])] : [row[3] * 12, (row[4] + 1) * 12];
      return time.from < known[1] && known[0] < time.to;
    });
  }

  function span(row, months) {
    if (months && row[7]) return "built from " + row[7] + " until before " + row[8];
    return row[3] === row[4] ? String(row[3]) : row[3] + " to " + row[4];
  }

  /* What is recorded where no vehicle is of the time asked for: "No Finch of 2020; recorded: 2014 to 2018". */
  function recorded(rows, times) {
    var months = times.some(function (time) { return time.months; });
    var models = {};
    rows.forEach(function (row) {
      var name = row[1] + " " + row[2];
      models[name] = (models[name] || []).concat([row]);
    });
    var names = Object.keys(models).sort();
    var spans = names.map(function (name) {
      return models[name].sort(function (a, b) { return a[3] - b[3]; }).map(function (row) { return span(row, months); }).join(", ");
    });
    var words = times[0].words;
    if (names.length === 1) return "No " + names[0] + " of " + words + "; recorded: " + spans[0] + ".";
    var shown = names.slice(0, 5).map(function (name, index) { return name + " " + spans[index]; });
    var more = names.length > 5 ? "; and " + (names.length - 5) + " more" : "";
    return "None of " + words + "; recorded: " + shown.join("; ") + more + ".";
  }

  return { read: read, split: split, holds: holds, recorded: recorded };
})();
