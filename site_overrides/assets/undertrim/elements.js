/* Elements that a page's template has: who asks for one that is not there has an error in the page, not a case. */

/** @param {string} id */
export function byId(id) { return document.getElementById(id); }

/** @param {string} id */
export function field(id) { return /** @type {HTMLInputElement} */ (byId(id)); }

/**
 * @param {string} selector
 * @param {ParentNode} [within]
 */
export function all(selector, within = document) { return /** @type {HTMLElement[]} */ (Array.from(within.querySelectorAll(selector))); }

/**
 * @param {string} selector
 * @param {ParentNode} [within]
 */
export function fields(selector, within = document) { return /** @type {HTMLInputElement[]} */ (all(selector, within)); }

/**
 * The first element above one that a selector means.
 * @param {Element} element
 * @param {string} selector
 */
export function above(element, selector) { return /** @type {HTMLElement} */ (element.closest(selector)); }

/**
 * What an event happened to.
 * @param {Event} event
 */
export function target(event) { return /** @type {HTMLInputElement} */ (event.target); }

/**
 * A new element with attributes, what it reacts to, and what is in it.
 * @param {string} tag
 * @param {Record<string, string | boolean | ((event: any) => void)>} [given] a truth sets an attribute or leaves it out, a function is called on the event of that name
 * @param {...(Node | string | null)} inside what is empty is left out
 */
export function make(tag, given = {}, ...inside) {
  const made = document.createElement(tag);
  Object.entries(given).forEach(([name, value]) => {
    if (typeof value === "function") made.addEventListener(name, value);
    else if (value === true) made.setAttribute(name, "");
    else if (value !== false) made.setAttribute(name, value);
  });
  made.append(...inside.filter(Boolean));
  return made;
}
