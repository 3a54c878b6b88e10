/* What a script says: sentences of the program's catalogue, in the language that the site was built in. The bundle brings those it needs. */

/** @type {{ tag: string, decimal: string, forms: string, before: { word: string, instead: string, beginning: string }[], texts: Record<string, string | string[]> }} */
let known = { tag: "en", decimal: ".", forms: "", before: [], texts: {} };

/**
 * Takes sentences by their codes, beside those that it has. `forms` has a digit for each number below 200, which form goes with it; without it English's are taken.
 * `before` are the words that change before what begins in a certain way.
 * @param {typeof known} words
 */
export function learn(words) { known = { ...words, texts: { ...known.texts, ...words.texts } }; }

/** The language of what is said. */
export function tag() { return known.tag; }

/**
 * A number with the decimal mark of the language.
 * @param {number | string} value
 */
export function number(value) { return String(value).replace(".", known.decimal); }

function form(count) {
  if (!known.forms) return count === 1 ? 0 : 1;
  const whole = Math.abs(Math.trunc(count));
  return Number(known.forms[whole < 200 ? whole : 100 + whole % 100]);
}

/**
 * A sentence by its code, with values by their names: numbers get the decimal mark, `{name:lower}` goes on in lower case, `{name:inside}` with a small first letter, and `count` chooses the form.
 * @param {string} code
 * @param {Record<string, string | number>} [values]
 * @returns {string}
 */
export function say(code, values = {}) { return filled(code, values); }

/**
 * What to do about it.
 * @param {string} code
 * @param {Record<string, string | number>} [values]
 */
export function wayOut(code, values = {}) { return filled(code + "#way_out", values); }

function filled(code, values) {
  const text = known.texts[code];
  if (text === undefined) throw new Error("no such sentence: " + code);
  const chosen = typeof text === "string" ? text : text[form(typeof values.count === "number" ? values.count : 2)];
  let said = "", at = 0;
  for (const found of chosen.matchAll(/\{\{|\}\}|\{(\w+)(:lower|:inside)?\}/g)) {
    const [whole, name, how] = found, text = chosen.slice(at, found.index);
    const value = name ? put(code, values, name, how) : whole[0];
    said += (name ? leading(text, value) : text) + value;
    at = found.index + whole.length;
  }
  return said + chosen.slice(at);
}

function put(code, values, name, how) {
  const value = values[name];
  if (value === undefined) throw new Error(code + " lacks " + name);
  const said = typeof value === "number" ? number(value) : value;
  return how === ":lower" ? said.toLowerCase() : how ? said.slice(0, 1).toLowerCase() + said.slice(1) : said;
}

/* A text as it stands before a value. */
function leading(text, value) {
  const rule = known.before.find((one) => text.endsWith(` ${one.word} `) && new RegExp("^(?:" + one.beginning + ")").test(value));
  return rule ? `${text.slice(0, -rule.word.length - 1)}${rule.instead} ` : text;
}

/**
 * Several as they are listed in a sentence.
 * @param {string[]} items
 * @param {string} [joined] how: an entry of the catalogue's `lists`
 * @returns {string}
 */
export function list(items, joined = "and") {
  if (items.length < 2) return items.join("");
  const before = joined === "and" || joined === "or" ? "comma" : joined;
  const first = items.slice(0, -1).reduce((one, other) => say("lists/" + before, { first: one, last: other }));
  return say("lists/" + joined, { first, last: items[items.length - 1] });
}
