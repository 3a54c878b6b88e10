/* How what is typed is held against a name: folded, in several forms, and with one slip of the finger (`derive/finding/names.py`). */

export const BEGINS = 2;
export const SLIP = 0.5;
const WHOLE = 3, INSIDE = 1, LEAST_INSIDE = 3, LEAST_SLIP = 4;

/** @param {string} text */
export function fold(text) { return text.normalize("NFKD").replace(/[\u0300-\u036f]/g, "").toLowerCase(); }

/**
 * A name three ways: its words, its pieces between letters and digits, and all joined: "C-8" is c-8, c, 8 and c8.
 * @param {string} name
 */
export function forms(name) {
  const folded = fold(name), parts = folded.match(/[a-z]+|[0-9]+|[^\sa-z0-9-]+/g) || [];
  return folded.split(/\s+/).concat(parts, [folded.replace(/[^a-z0-9]+/g, ""), folded]);
}

/**
 * How well a word that was typed fits a form of a name; 0 where it does not.
 * @param {string} token
 * @param {string} form
 */
export function fits(token, form) {
  if (form === token) return WHOLE;
  if (form.startsWith(token)) return BEGINS;
  if (token.length >= LEAST_INSIDE && form.includes(token)) return INSIDE;
  return token.length >= LEAST_SLIP && oneSlip(token, form) ? SLIP : 0;
}

/**
 * Whether one letter is another, too many, missing, or exchanged with its neighbour.
 * @param {string} token
 * @param {string} form
 */
export function oneSlip(token, form) {
  if (Math.abs(token.length - form.length) > 1) return false;
  let at = 0;
  while (at < token.length && token[at] === form[at]) at += 1;
  const one = token.slice(at), other = form.slice(at);
  return one.slice(1) === other.slice(1) || one.slice(1) === other || one === other.slice(1) ||
    (one[0] === other[1] && one[1] === other[0] && one.slice(2) === other.slice(2));
}
