/* Lengths as people type them, and as pages print them: the same as the program's own reading of "2 3/16 in", to the last digit and with
   the same words for what cannot be read. The table of units comes with the site; all rounding is done on whole numbers. */

const LONGEST = 40;
const NUMERAL = /^([-−]?)(?:(?:([0-9]+)(?: | ?- ?))?([0-9]+) ?[/⁄] ?([0-9]+)|([0-9]+(?:\.[0-9]+)?|\.[0-9]+))([^0-9]*)$/;
const SPACES = /[\t-\r\x1c-\x20\x85\xa0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]+/;
const WHOLE = Math.pow(2, 53);
let kind = null;

/* The table of units, before anything is read. */
export function use(table) { kind = table; }

/* A text that is no length, with the way out. */
export class Unread extends Error {
  constructor(message, hint) {
    super(message);
    this.hint = hint;
  }
}

/* In quotes for a message: printable, and cut when long. */
function quoted(text) {
  const letters = Array.from(text).map((letter) => letter !== " " && /[\p{C}\p{Z}]/u.test(letter) ? "?" : letter);
  return "'" + (letters.length > LONGEST ? letters.slice(0, LONGEST - 1).join("") + "…" : letters.join("")) + "'";
}

/* A decimal number as a ratio of whole numbers. */
function ratio(text) {
  const found = /^(-?)(\d+)(?:\.(\d+))?(?:e([-+]?\d+))?$/.exec(text);
  const digits = BigInt(found[2] + (found[3] || "")) * (found[1] ? -1n : 1n);
  const power = Number(found[4] || 0) - (found[3] || "").length;
  return power < 0 ? { top: digits, bottom: 10n ** BigInt(-power) } : { top: digits * 10n ** BigInt(power), bottom: 1n };
}

function times(one, other) { return { top: one.top * other.top, bottom: one.bottom * other.bottom }; }

function over(one, other) { return { top: one.top * other.bottom, bottom: one.bottom * other.top }; }

function divisor(a, b) { while (b) { const rest = a % b; a = b; b = rest; } return a < 0n ? -a : a; }

/* The nearest float. Beyond 2^53 a division of floats would round twice, so the quotient is taken to 64 bits, the last of which says
   whether anything is left over. */
function float(number) {
  const common = divisor(number.top, number.bottom) || 1n;
  const top = number.top / common, bottom = number.bottom / common;
  if (top < WHOLE && bottom < WHOLE) return Number(top) / Number(bottom);
  const shift = BigInt(Math.max(0, 64 + bottom.toString(2).length - top.toString(2).length));
  const whole = (top << shift) / bottom;
  return Number((top << shift) % bottom ? whole | 1n : whole) / Math.pow(2, Number(shift));
}

function fraction(text) {
  const parts = text.split("/");
  return parts.length < 2 ? ratio(text) : over(ratio(parts[0]), ratio(parts[1]));
}

/* Half up to so many decimals, no trailing zeros; a small number keeps two digits and is never 0. */
function rounded(number, decimals) {
  const top = number.top < 0n ? -number.top : number.top;
  function below(places) { return top * 10n ** BigInt(places) < number.bottom; }
  while (top && below(decimals)) decimals += below(decimals + 1) ? 1 : 2;
  const whole = (2n * top * 10n ** BigInt(decimals) + number.bottom) / (2n * number.bottom);
  const digits = whole.toString().padStart(decimals + 1, "0");
  const cut = digits.length - decimals;
  const shown = (digits.slice(0, cut) + "." + digits.slice(cut)).replace(/0+$/, "").replace(/\.$/, "");
  return (number.top < 0n ? "-" : "") + shown;
}

/* To so many decimals, a tie to the even digit: the exact decimal expansion of the number decides. */
export function round(value, decimals) {
  if (!(Math.abs(value) < WHOLE)) return value;
  const text = Math.abs(value).toFixed(60);
  const cut = text.indexOf(".") + 1 + decimals;
  const rest = text.slice(cut).replace(".", "");
  let kept = BigInt(text.slice(0, cut).replace(".", "") || "0");
  const half = "5" + "0".repeat(rest.length - 1);
  if (rest > half || (rest === half && kept % 2n === 1n)) kept += 1n;
  const digits = kept.toString().padStart(decimals + 1, "0");
  const whole = digits.slice(0, digits.length - decimals);
  const found = Number(decimals ? whole + "." + digits.slice(digits.length - decimals) : whole);
  return value < 0 ? -found || 0 : found;
}

/* A value in mm, rounded in the unit that people of the other system use. */
function other(value, system) {
  const row = kind.other.find((one) => one.from === system && (!("below" in one) || Math.abs(value) < one.below));
  if (!row) return "";
  return rounded(over(ratio(String(value)), fraction(kind.units[row.to].factor)), row.decimals) + " " + row.to;
}

export function both(value) {
  const metric = round(value, 2);
  return rounded(ratio(String(metric)), 2) + " mm (" + (other(metric, "metric") || "0 in") + ")";
}

/* Dots, and spaces and hyphens between letters, as one dot. (Looking behind in the expression itself stops old phones.) */
function joined(spelling) {
  return spelling.replace(/ ?[·⋅•∙*.] ?|[ -](?=\S)/g, (joint, at) => /^[ -]$/.test(joint) && !/\S/.test(spelling.charAt(at - 1)) ? joint : ".");
}

/* The unit meant by a spelling: as it stands, or in capitals where a unit allows them. */
function find(spelling) {
  const word = joined(spelling), names = Object.keys(kind.units);
  return names.find((name) => kind.units[name].spellings.indexOf(word) >= 0) ||
    names.find((name) => kind.units[name].any_case && folded(kind.units[name]).indexOf(word.toLowerCase()) >= 0);
}

function folded(unit) { return unit.spellings.map((one) => one.toLowerCase()); }

function tidy(typed) {
  if (Array.from(typed).length > LONGEST) throw new Unread(quoted(typed) + " is too long for a value", "write one number and one unit, and nothing else");
  return typed.normalize("NFC").split(SPACES).filter(Boolean).join(" ");
}

/* A letter that is a fraction of its own, such as ½. */
function vulgar(text) {
  return Array.from(text).some((letter) => letter > "~" && letter !== "⁄" && letter.normalize("NFKC").indexOf("⁄") >= 0);
}

/* { value, step, text, shown } in mm; throws Unread with the way out. */
export function read(typed) {
  const text = tidy(typed), found = NUMERAL.exec(text);
  if (!found || vulgar(text)) throw new Unread(quoted(text) + " cannot be read as a number and a unit", wayOut(text));
  const spelling = found[6].replace(/^ | $/g, "");
  const numeral = found[3] ? parted(found, text, spelling) : pointed(found);
  const name = find(spelling);
  if (!name) throw refused(text, numeral, spelling);
  const unit = kind.units[name];
  if (numeral.parts && !unit.fractions) throw new Unread(quoted(text) + " is a fraction of a unit that has none", offers(numeral));
  if (found[1]) throw new Unread(quoted(text) + " is negative, which " + kind.name + " cannot be", "write it without the minus sign");
  const factor = fraction(unit.factor);
  const value = float(times(numeral.value, factor));
  const step = float(times(coarse(numeral, unit.mark || 1), factor));
  const second = other(value, unit.system);
  return { value, step, text, shown: numeral.text + " " + name + (second ? " (" + second + ")" : "") };
}

function refused(text, numeral, spelling) {
  if (!spelling) return new Unread(quoted(text) + " has no unit", offers(numeral));
  const word = joined(spelling);
  const owner = kind.elsewhere.find((one) => one.exact.indexOf(word) >= 0 || one.any_case.indexOf(word.toLowerCase()) >= 0);
  if (owner) return new Unread(quoted(text) + " is " + owner.name + ", not " + kind.name, inUnits());
  const near = nearest(word.toLowerCase());
  const slip = near && !(numeral.parts && !kind.units[near].fractions);
  return new Unread("unit " + quoted(spelling) + " in " + quoted(text) + " is not known", slip ? "write " + quoted(numeral.text + " " + near) : inUnits());
}

function inUnits() { return "write it in " + either(kind.offer) + ", such as " + quoted(kind.example); }

function either(words) { return words.length > 1 ? words.slice(0, -1).join(", ") + " or " + words[words.length - 1] : words.join(""); }

/* The unit that a spelling is a slip for: wrong case, else at least three quarters alike. */
function nearest(word) {
  const owners = {};
  Object.keys(kind.units).forEach((name) => { folded(kind.units[name]).forEach((one) => { owners[one] = name; }); });
  if (Object.prototype.hasOwnProperty.call(owners, word)) return owners[word];
  const ranked = Object.keys(owners).map((known) => ({ known, share: 2 * alike(known, word) / (known.length + word.length) }))
    .filter((one) => word.length > 2 && one.share >= 0.75)
    .sort((a, b) => b.share - a.share || (a.known < b.known ? 1 : -1));
  return ranked.length ? owners[ranked[0].known] : "";
}

/* How many letters two words share: in their longest common run, and then left and right of it. */
function alike(one, other) {
  let best = { size: 0, at: 0, there: 0 };
  for (let i = 0; i < one.length; i += 1) {
    for (let j = 0; j < other.length; j += 1) {
      let size = 0;
      while (i + size < one.length && j + size < other.length && one[i + size] === other[j + size]) size += 1;
      if (size > best.size) best = { size, at: i, there: j };
    }
  }
  if (!best.size) return 0;
  return best.size + alike(one.slice(0, best.at), other.slice(0, best.there)) +
    alike(one.slice(best.at + best.size), other.slice(best.there + best.size));
}

function pointed(found) {
  const plain = found[5][0] === "." ? "0" + found[5] : found[5];
  return { text: (found[1] ? "-" : "") + plain, value: ratio(plain), parts: 0n, decimals: (plain.split(".")[1] || "").length };
}

function parted(found, text, spelling) {
  const whole = BigInt(found[2] || 0), top = BigInt(found[3]), bottom = BigInt(found[4]);
  if (!bottom) throw new Unread(quoted(text) + " divides by zero", "check the fraction");
  if (top >= bottom) {
    const hint = whole || !spelling ? "check the fraction" : "write " + quoted(mixed(top, bottom) + " " + spelling);
    throw new Unread("the fraction in " + quoted(text) + " is not below one", hint);
  }
  const shown = (found[1] ? "-" : "") + (whole ? whole + " " : "") + top + "/" + bottom;
  return { text: shown, value: { top: whole * bottom + top, bottom }, parts: bottom, decimals: 0 };
}

/* A ratio above one in lowest terms, as people write it: 1 3/16. */
function mixed(top, bottom) {
  const common = divisor(top, bottom), rest = (top % bottom) / common;
  return top / bottom + (rest ? " " + rest + "/" + bottom / common : "");
}

function coarse(numeral, mark) {
  if (numeral.decimals) return { top: 1n, bottom: 2n * 10n ** BigInt(numeral.decimals) };
  return { top: 1n, bottom: 2n * (numeral.parts > mark ? numeral.parts : BigInt(mark)) };
}

function offers(numeral) {
  const names = kind.offer.filter((name) => kind.units[name].fractions || !numeral.parts);
  return "write " + either(names.map((name) => quoted(numeral.text + " " + name)));
}

function wayOut(text) {
  if (/[0-9],[0-9]{3}(?![0-9])/.test(text)) return "write it without the comma: " + quoted(text.replace(/,/g, "")) + " or " + quoted(text.replace(/,/g, "."));
  if (/[0-9],[0-9]/.test(text)) return "write a decimal point: " + quoted(text.replace(/,/g, "."));
  if (/[0-9.]e[-+]?[0-9]/i.test(text)) return "write the number out, without an exponent";
  if (vulgar(text)) return "write the fraction with a slash, such as '2 3/16 in'";
  if (/[0-9][^0-9/]*(?:-|–|\.\.\.?|…| to )[^0-9/]*[0-9]/.test(text)) return "write one value, not a range";
  return "write one number and one unit, such as " + quoted(kind.example);
}
