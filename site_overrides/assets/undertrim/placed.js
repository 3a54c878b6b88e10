/* What a visit does not show is not in the document: it is kept here, and a comment stands in its place until it is put back. */

/** @type {Map<Element, Comment>} */
const marks = new Map();

/**
 * @param {Element} item
 * @param {boolean} shown
 */
export function place(item, shown) {
  const mark = marks.get(item);
  if (shown && mark) {
    mark.replaceWith(item);
    marks.delete(item);
  } else if (!shown && !mark) {
    const made = document.createComment("");
    marks.set(item, made);
    item.replaceWith(made);
  }
}

/**
 * Whether something is below an element, or would be if it were shown.
 * @param {Element} item
 * @param {Element} holder
 */
export function standsIn(item, holder) {
  /** @type {Node | null} */
  let at = item;
  while (at && at !== holder) at = (marks.get(/** @type {Element} */ (at)) || at).parentNode;
  return at === holder;
}

/* Whether something with this id is kept out of the document. */
export function keptOut(id) {
  const named = `[id="${CSS.escape(id)}"]`;
  return !document.getElementById(id) && Array.from(marks.keys()).some((item) => item.matches(named) || item.querySelector(named) !== null);
}
