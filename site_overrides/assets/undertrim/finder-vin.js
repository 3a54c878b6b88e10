/* Vehicle identification numbers, as `derive/vin.py` reads them: what is one, its check digit, its model year, and which pattern it is of.
   The table comes with the index. Nothing here keeps a number or hands it on. */

/** @import { VinTable } from "published" */
/** @import { FinderVin } from "published" */

const MOST_LETTERS = 14, LETTERS_ALONE = 3;

/** @param {string} text */
export function normal(text) { return text.replace(/[\s-]/g, "").toUpperCase(); }

/**
 * @param {string} text
 * @param {VinTable} table
 */
function like(text, table) { return text.length === table.length && /^[A-Z0-9]+$/.test(text) && text.replace(/\d/g, "").length <= MOST_LETTERS; }

/**
 * Whether a text of several words may be one number: it is one without the gaps, ends in four digits, and has no word in it.
 * @param {string} text
 * @param {VinTable} table
 */
export function inPieces(text, table) {
  const whole = normal(text), pieces = text.trim().split(/[\s-]+/);
  return isVin(whole, table) && /\d{4}$/.test(whole) && !pieces.some((one) => one.length > LETTERS_ALONE && /^\p{L}+$/u.test(one));
}

/**
 * @param {string} text without gaps
 * @param {VinTable} table
 */
export function isVin(text, table) { return like(text, table) && Array.from(text).every((letter) => table.alphabet.includes(letter)); }

/**
 * Whether it would be one, but for I, O or Q, which none has.
 * @param {string} text
 * @param {VinTable} table
 */
export function misread(text, table) { return like(text, table) && !isVin(text, table); }

/**
 * What position 9 should hold (49 CFR 565.15(c)).
 * @param {string} vin
 * @param {VinTable} table
 */
export function checkDigit(vin, table) {
  const total = Array.from(vin).reduce((sum, one, at) => sum + (table.check.values[one] ?? Number(one)) * table.check.weights[at], 0);
  return total % 11 === 10 ? "X" : String(total % 11);
}

/**
 * @param {string} vin
 * @param {VinTable} table
 */
export function checks(vin, table) { return vin[table.check.position - 1] === checkDigit(vin, table); }

/**
 * Whether the regulation certainly asks for the check digit.
 * @param {string} vin
 * @param {VinTable} table
 */
export function asksCheck(vin, table) { return table.check.asking.includes(vin[0]); }

/**
 * The model years that position 10 may mean, none after `latest`; position 7 decides for light vehicles alone, and where the regulation holds.
 * @param {string} vin
 * @param {VinTable} table
 * @param {boolean | null} light
 * @param {number} latest
 */
export function modelYears(vin, table, light, latest) {
  const { position, letters, first, again, span_position } = table.year;
  const at = letters.indexOf(vin[position - 1]);
  if (at < 0) return [];
  const both = [first + at, first + at + again];
  const meant = light && asksCheck(vin, table) ? [both[/\d/.test(vin[span_position - 1]) ? 0 : 1]] : both;
  return meant.filter((year) => year <= latest);
}

/**
 * @param {string} vin
 * @param {string} pattern
 */
export function isOf(vin, pattern) { return Array.from(pattern).every((wanted, at) => wanted === "." || wanted === vin[at]); }

/**
 * What a number says of a car by the patterns of its record; null where it is of no pattern.
 * @param {string} vin
 * @param {FinderVin[]} patterns
 * @returns {Record<string, string[]> | null}
 */
export function answers(vin, patterns) {
  const found = patterns.filter(([pattern]) => isOf(vin, pattern)).map(([, said]) => said);
  if (!found.length) return null;
  /** @type {Record<string, string[]>} */
  const told = {};
  found.flatMap((said) => Object.keys(said)).forEach((name) => {
    const lists = found.filter((said) => name in said).map((said) => said[name]);
    const shared = lists[0].filter((choice) => lists.every((other) => other.includes(choice)));
    if (shared.length) told[name] = shared;
  });
  return told;
}
