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
