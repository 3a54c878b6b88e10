/* The shelf: all gear in stock, once for all vehicles. It is asked for when somebody wants gear, and comes as scripts that call undertrimShelf(), so that it also loads from a folder on disk. */

import { unpacked } from "./packed.js";

/** @import { Shelf, ShelfGear, StockVisit, StockWiring } from "published" */

const base = /** @type {HTMLScriptElement} */ (document.currentScript).src.replace(/assets\/undertrim\/[^/]*$/, "");
/** @type {Shelf} */
let first;
/** @type {Record<string, ShelfGear[]>} */
const pieces = {};
/** @type {Record<string, StockVisit | StockWiring>} */
const vehicles = {};
/** @type {Record<string, Promise<void>>} */
const coming = {};

window.undertrimShelf = (name, packed) => {
  const data = unpacked(packed);
  if (name.includes("/")) vehicles[name] = data;
  else if (Array.isArray(data)) pieces[name] = data;
  else first = data;
};

/**
 * Loads a script of the site once; one that does not come can be asked for again.
 * @param {string} path
 * @returns {Promise<void>}
 */
export function load(path) {
  if (!coming[path]) {
    coming[path] = new Promise((resolve, reject) => {
      const script = document.createElement("script");
      script.src = base + path;
      script.onload = () => { resolve(); };
      script.onerror = () => { delete coming[path]; script.remove(); reject(new Error(path)); };
      document.head.append(script);
    });
  }
  return coming[path];
}

/**
 * The shelf with the gear of some kinds, in the order of the stock. Rejects where it cannot be loaded.
 * @param {string[]} kinds
 * @returns {Promise<Shelf>}
 */
export function ask(kinds) {
  const wanted = () => Object.keys(first.pieces).filter((kind) => kinds.includes(kind)).flatMap((kind) => first.pieces[kind]);
  return load("shelf/start.js").then(() => Promise.all(wanted().map((name) => load(`shelf/${name}.js`)))).then(whole);
}

/**
 * What follows from a vehicle (`make/id`, with `.wiring` behind it for its page of the wiring) and the stock. Rejects where it cannot be loaded.
 * @param {string} name
 * @returns {Promise<any>}
 */
export function askVehicle(name) { return load(`shelf/${name}.js`).then(() => vehicles[name]); }

/* With all that has come so far. */
function whole() {
  return { ...first, stock: first.stock.concat(Object.values(first.pieces).flat().flatMap((name) => pieces[name] || [])) };
}
