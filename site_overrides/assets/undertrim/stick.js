/* The whole site in one file: shows the pages that are packed in it, in the place of this one. The address says which, `undertrim.html?jobs=dash#/vehicles/...`,
   so that going back, reloading and the words of a visit work as they do in a folder. No script runs whose digest the policy of the file does not name. */

const FILE = location.href.replace(/[?#].*$/, ""), ROOT = new URL(".", FILE).href, HOME = "index.html";
const KINDS = { html: "text/html", svg: "image/svg+xml", png: "image/png", jpg: "image/jpeg", jpeg: "image/jpeg", webp: "image/webp", pdf: "application/pdf", json: "application/json" };

/** @type {Map<string, HTMLElement>} what is packed, by its name in the site */
const packed = new Map();
document.querySelectorAll("script[data-file]").forEach((one) => { if (one instanceof HTMLElement) packed.set(one.dataset.file, one); });

async function bytes(path) {
  const raw = Uint8Array.from(atob(packed.get(path).textContent), (one) => one.charCodeAt(0));
  return new Response(new Blob([raw]).stream().pipeThrough(new DecompressionStream("deflate-raw")));
}

async function text(path) { return (await bytes(path)).text(); }

async function picture(path) {
  const kind = KINDS[path.replace(/.*\./, "").toLowerCase()] || "application/octet-stream";
  return URL.createObjectURL(new Blob([await (await bytes(path)).arrayBuffer()], { type: kind }));
}

/* The page that the address asks for, with the place in it. */
function asked() {
  const [path, place] = decodeURIComponent(location.hash).replace(/^#\/?/, "").split("#");
  return { path: packed.has(path) ? path : HOME, place: place || "" };
}

const shown = asked().path;

/* An address as a page means it, and the name of the file that it leads to; empty where that is not packed. */
function resolved(address) { return new URL(address, ROOT + shown); }
function named(url) {
  const plain = decodeURIComponent(url.href.replace(/[?#].*$/, ""));
  return plain.startsWith(decodeURIComponent(ROOT)) && packed.has(plain.slice(decodeURIComponent(ROOT).length)) ? plain.slice(decodeURIComponent(ROOT).length) : "";
}

/* Data comes as a call with JSON, which needs no leave to run. */
function called(code) {
  const found = /^(?:window\.)?([\w.]+)\(([^]*)\);\s*$/.exec(code);
  if (!found) return false;
  let values;
  try { values = JSON.parse(`[${found[2]}]`); } catch (error) { return false; }
  const names = found[1].split("."), last = names.pop();
  const holder = names.reduce((one, name) => one[name], /** @type {any} */ (window));
  holder[last](...values);
  return true;
}

function run(code, path) {
  if (called(code)) return;
  const script = document.createElement("script");
  if (path) Object.defineProperty(script, "src", { value: ROOT + path }); // by which scripts know where the site begins
  script.textContent = code;
  HTMLElement.prototype.appendChild.call(document.head, script);
}

/* What scripts fetch later is packed too. */
function heedHead() {
  ["append", "appendChild"].forEach((way) => {
    const before = document.head[way].bind(document.head);
    document.head[way] = (one) => {
      const path = one instanceof HTMLScriptElement && one.src ? named(new URL(one.src)) : "";
      if (!path) return before(one);
      text(path).then((code) => { run(code, path); one.dispatchEvent(new Event("load")); }, () => { one.dispatchEvent(new Event("error")); });
      return one;
    };
  });
}

async function styles(page) {
  const made = [];
  for (const one of page.querySelectorAll("link[rel=stylesheet], style")) {
    const sheet = new CSSStyleSheet(), path = one.matches("link") ? named(resolved(one.getAttribute("href"))) : "";
    sheet.replaceSync(path ? await text(path) : one.textContent);
    made.push(sheet);
    one.remove();
  }
  return made;
}

/* Links lead to where they led in the folder, pictures are what is packed. */
async function settle(page) {
  page.querySelectorAll("meta[http-equiv], link[rel=canonical]").forEach((one) => { one.remove(); });
  page.querySelectorAll("link[rel=manifest]").forEach((one) => { one.setAttribute("href", resolved(one.getAttribute("href")).href); }); // where the site begins
  page.querySelectorAll("a[href]:not([href^='#']), area[href]").forEach((one) => {
    const address = one.getAttribute("href");
    if (!/^[a-z][a-z0-9+.-]*:/i.test(address)) one.setAttribute("href", resolved(address).href);
  });
  page.querySelectorAll("[data-top]").forEach((one) => { if (one instanceof HTMLElement) one.dataset.top = resolved(one.dataset.top).href; });
  page.querySelectorAll("picture > source").forEach((one) => { one.remove(); }); // of a picture in several sizes the one is taken that all browsers know
  page.querySelectorAll("img[srcset]").forEach((one) => { one.removeAttribute("srcset"); });
  for (const one of page.querySelectorAll("img[src], link[rel=icon]")) {
    const attribute = one.matches("img") ? "src" : "href", path = named(resolved(one.getAttribute(attribute)));
    if (path) one.setAttribute(attribute, await picture(path));
  }
}

async function show() {
  const { place } = asked(), page = new DOMParser().parseFromString(await text(shown), "text/html");
  const sheets = await styles(page), scripts = Array.from(page.scripts).filter((one) => !one.type || /javascript/.test(one.type));
  scripts.forEach((one) => { one.remove(); });
  await settle(page);
  document.adoptedStyleSheets = sheets;
  document.replaceChild(document.adoptNode(page.documentElement), document.documentElement);
  heedHead();
  for (const one of scripts) {
    const path = one.getAttribute("src") ? named(resolved(one.getAttribute("src"))) : "";
    if (path || !one.getAttribute("src")) run(path ? await text(path) : one.textContent, path);
  }
  window.dispatchEvent(new Event("load"));
  go(place);
}

function go(place) {
  const there = place && document.getElementById(place);
  if (there) there.scrollIntoView();
}

/* The address of a page within this file. Who hands on where this page is hands on its page too, which is another one there. */
function fileAt(url, path) { return `${FILE}${url.search}#/${path}${url.hash.replace(/^#\/[^#]*/, "")}`; }

async function openFile(path) { window.open(await picture(path)); }

/** @param {MouseEvent} event */
function follow(event) {
  const link = event.target instanceof Element && event.target.closest("a[href]");
  if (!link || event.defaultPrevented || event.button || event.ctrlKey || event.metaKey || event.shiftKey) return;
  const address = link.getAttribute("href"), url = address.startsWith("#") ? new URL(ROOT + shown + address) : resolved(link instanceof HTMLAnchorElement && /^[a-z]+:/i.test(address) ? link.href : address);
  const path = named(url);
  if (!path) return;
  event.preventDefault();
  if (address.startsWith("#")) go(decodeURIComponent(url.hash.slice(1)));
  else if (!path.endsWith(".html")) openFile(path);
  else location.href = fileAt(url, path);
}

/* A page that leads on by itself, to the language of its reader. */
/** @param {CustomEvent} event */
function leave(event) {
  const url = new URL(event.detail), path = named(url);
  if (!path) return;
  event.preventDefault();
  location.replace(fileAt(url, path));
}

window.addEventListener("click", follow);
window.addEventListener("ut-leave", (event) => { leave(/** @type {CustomEvent} */ (event)); });
/* Where nothing but the hash differs the browser does not load the file again by itself. */
window.addEventListener("popstate", () => { if (asked().path !== shown) location.reload(); });

/* A visit is written into the address; which page it is of stays there. */
const replace = history.replaceState.bind(history);
history.replaceState = (state, unused, url) => { replace(state, unused, url && !String(url).includes("#") ? url + location.hash : url); };

show();
