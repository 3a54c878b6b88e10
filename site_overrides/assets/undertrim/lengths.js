/* Lengths as people type them, and as pages print them: the same as the program's own reading of "2 3/16 in", to the last digit.
   The table of units comes with the page; all rounding is done on whole numbers. */
(function () {
  "use strict";

  var LONGEST = 40;
  var NUMERAL = /^([-−]?)(?:(?:([0-9]+)(?: | ?- ?))?([0-9]+) ?[/⁄] ?([0-9]+)|([0-9]+(?:\.[0-9]+)?|\.[0-9]+))([^0-9]*)$/;
  var kind = null;

  function use(table) { kind = table; return api; }

  function Unread(message, hint) {
    this.message = message;
    this.hint = hint;
  }

  function quoted(text) {
    return "'" + (text.length > LONGEST ? text.slice(0, LONGEST - 1) + "…" : text) + "'";
  }

  /* A decimal number as a ratio of whole numbers. */
  function ratio(text) {
    var found = /^(-?)(\d+)(?:\.(\d+))?(?:e([-+]?\d+))?$/.exec(text);
    var digits = BigInt(found[2] + (found[3] || "")) * (found[1] ? -1n : 1n);
    var power = Number(found[4] || 0) - (found[3] || "").length;
    return power < 0 ? { top: digits, bottom: 10n ** BigInt(-power) } : { top: digits * 10n ** BigInt(power), bottom: 1n };
  }

  function times(one, other) { return { top: one.top * other.top, bottom: one.bottom * other.bottom }; }

  function over(one, other) { return { top: one.top * other.bottom, bottom: one.bottom * other.top }; }

  function divisor(a, b) { while (b) { var rest = a % b; a = b; b = rest; } return a < 0n ? -a : a; }

  function float(number) {
    var common = divisor(number.top, number.bottom) || 1n;
    return Number(number.top / common) / Number(number.bottom / common);
  }

  function fraction(text) {
    var parts = text.split("/");
    return parts.length < 2 ? ratio(text) : over(ratio(parts[0]), ratio(parts[1]));
  }

  /* Half up to so many decimals, no trailing zeros; a small number keeps two digits and is never 0. */
  function rounded(number, decimals) {
    var top = number.top < 0n ? -number.top : number.top;
    function below(places) { return top * 10n ** BigInt(places) < number.bottom; }
    while (top && below(decimals)) decimals += below(decimals + 1) ? 1 : 2;
    var whole = (2n * top * 10n ** BigInt(decimals) + number.bottom) / (2n * number.bottom);
    var digits = whole.toString().padStart(decimals + 1, "0");
    var cut = digits.length - decimals;
    var shown = (digits.slice(0, cut) + "." + digits.slice(cut)).replace(/0+$/, "").replace(/\.$/, "");
    return (number.top < 0n ? "-" : "") + shown;
  }

  /* To so many decimals, a tie to the even digit: the exact decimal expansion of the number decides. */
  function round(value, decimals) {
    if (!isFinite(value)) return value;
    var text = Math.abs(value).toFixed(60);
    var cut = text.indexOf(".") + 1 + decimals;
    var rest = text.slice(cut).replace(".", "");
    var kept = BigInt(text.slice(0, cut).replace(".", "") || "0");
    var half = "5" + "0".repeat(rest.length - 1);
    if (rest > half || (rest === half && kept % 2n === 1n)) kept += 1n;
    var digits = kept.toString().padStart(decimals + 1, "0");
    var whole = digits.slice(0, digits.length - decimals);
    var found = Number(decimals ? whole + "." + digits.slice(digits.length - decimals) : whole);
    return value < 0 ? -found || 0 : found;
  }

  /* A value in mm, rounded in the unit that people of the other system use. */
  function other(value, system) {
    var row = kind.other.find(function (one) { return one.from === system && (!("below" in one) || Math.abs(value) < one.below); });
    if (!row) return "";
    return rounded(over(ratio(String(value)), fraction(kind.units[row.to].factor)), row.decimals) + " " + row.to;
  }

  function both(value) {
    var metric = round(value, 2);
    return rounded(ratio(String(metric)), 2) + " mm (" + (other(metric, "metric") || "0 in") + ")";
  }

  function find(spelling) {
    var names = Object.keys(kind.units);
    return names.find(function (name) { return kind.units[name].spellings.indexOf(spelling) >= 0; }) ||
      names.find(function (name) { return kind.units[name].any_case && kind.units[name].spellings.indexOf(spelling.toLowerCase()) >= 0; });
  }

  /* { value, step, text, shown } in mm; throws Unread with the way out. */
  function read(typed) {
    var text = typed.normalize("NFC").trim().split(/\s+/).join(" ");
    if (text.length > LONGEST) throw new Unread(quoted(text) + " is too long for a value", "write one number and one unit, and nothing else");
    var found = NUMERAL.exec(text);
    if (!found) throw new Unread(quoted(text) + " cannot be read as a number and a unit", wayOut(text));
    var numeral = found[3] ? parted(found, text) : pointed(found);
    var spelling = found[6].trim();
    var name = spelling && find(spelling);
    if (!spelling) throw new Unread(quoted(text) + " has no unit", offers(numeral));
    if (!name) throw new Unread("unit " + quoted(spelling) + " in " + quoted(text) + " is not known", "write it in mm or in, such as " + quoted(kind.example));
    var unit = kind.units[name];
    if (numeral.parts && !unit.fractions) throw new Unread(quoted(text) + " is a fraction of a unit that has none", offers(numeral));
    if (found[1]) throw new Unread(quoted(text) + " is negative, which a length cannot be", "write it without the minus sign");
    var factor = fraction(unit.factor);
    var value = float(times(numeral.value, factor));
    var step = float(times(coarse(numeral, unit.mark || 1), factor));
    var second = other(value, unit.system);
    return { value: value, step: step, text: text, shown: numeral.text + " " + (unit.symbol || name) + (second ? " (" + second + ")" : "") };
  }

  function pointed(found) {
    var plain = found[5][0] === "." ? "0" + found[5] : found[5];
    return { text: plain, value: ratio(plain), parts: 0, decimals: (plain.split(".")[1] || "").length };
  }

  function parted(found, text) {
    var whole = BigInt(found[2] || 0), top = BigInt(found[3]), bottom = BigInt(found[4]);
    if (!bottom) throw new Unread(quoted(text) + " divides by zero", "check the fraction");
    if (top >= bottom) throw new Unread("the fraction in " + quoted(text) + " is not below one", "check the fraction");
    var shown = (whole ? whole + " " : "") + top + "/" + bottom;
    return { text: shown, value: { top: whole * bottom + top, bottom: bottom }, parts: Number(bottom), decimals: 0 };
  }

  function coarse(numeral, mark) {
    if (numeral.decimals) return { top: 1n, bottom: 2n * 10n ** BigInt(numeral.decimals) };
    return { top: 1n, bottom: 2n * BigInt(Math.max(numeral.parts, mark)) };
  }

  function offers(numeral) {
    var names = kind.offer.filter(function (name) { return kind.units[name].fractions || !numeral.parts; });
    return "write " + names.map(function (name) { return quoted(numeral.text + " " + name); }).join(" or ");
  }

  function wayOut(text) {
    if (/[0-9],[0-9]{3}(?![0-9])/.test(text)) return "write it without the comma: " + quoted(text.replace(/,/g, "")) + " or " + quoted(text.replace(/,/g, "."));
    if (/[0-9],[0-9]/.test(text)) return "write a decimal point: " + quoted(text.replace(/,/g, "."));
    return "write one number and one unit, such as " + quoted(kind.example);
  }

  var api = { use: use, read: read, both: both, round: round, Unread: Unread };
  if (typeof window !== "undefined") window.undertrimLengths = api;
  if (typeof module !== "undefined") module.exports = api;
})();
