/* What pages ask of the keeper, which is there where the site is served over http and the browser has such a thing. */

export const BASE = /** @type {HTMLScriptElement} */ (document.currentScript).src.replace(/assets\/undertrim\/[^/]*$/, "");
/* The top of the whole site, which is in one place for all its languages, and the folder of this page's language below it. */
export const TOP = /** @type {HTMLLinkElement} */ (document.querySelector("link[rel=manifest]")).href.replace(/[^/]*$/, "");
export const PLACE = BASE.slice(TOP.length);
export const SERVED = location.protocol.startsWith("http") && "serviceWorker" in navigator;

/**
 * Asks the keeper something; null where there is none.
 * @returns {Promise<any>}
 */
export async function ask(what, more = {}) {
  if (!SERVED) return null;
  const { active } = await navigator.serviceWorker.ready;
  return new Promise((resolve) => {
    const ways = new MessageChannel();
    ways.port1.onmessage = (event) => { resolve(event.data); };
    active.postMessage({ ask: what, ...more }, [ways.port2]);
  });
}

/* The pages of a vehicle stay as they are while a visit to it is under way. */
export function stay(address, under) {
  if (!SERVED) return;
  const loaded = performance.getEntriesByType("resource").map((one) => one.name).filter((name) => name.startsWith(TOP));
  const pages = ["", ".openings", ".wiring", ".record", ".questions"].map((view) => `${BASE}vehicles/${address}${view}.html`).concat(["", ".wiring"].map((view) => `${BASE}shelf/${address}${view}.js`), `${BASE}vehicles/${address}.facts.js`);
  if (under) ask("pin", { vehicle: PLACE + address, addresses: [...pages, ...loaded] });
  else ask("unpin", { vehicle: address });
}
