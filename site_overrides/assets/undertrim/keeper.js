/* Keeps the site on the device: a service worker, which stands between the pages and the network where the site is served over http.
   The network comes first, for a short time; then the copy, which says how old it is. What a visit under way was begun with stays as it
   was until the visit is over. A browser may stop this program at any moment: all that it must know next time stands in its caches. */

/** @typedef {{ whole: boolean, files: Record<string, string>, desk: Record<string, string>, makes: Record<string, string> }} KeeperList as publish/web/keeping.py writes it */
/** @typedef {{ pages: Record<string, string>, more: Record<string, string> }} KeeperMake */

const worker = /** @type {any} */ (self);
const root = new URL("./", location.href).href;

const KEPT = "undertrim-kept", PINNED = "undertrim-pinned:";
const MARKS = root + "keeper/marks", CHOICES = root + "keeper/choices"; // no such files: places in the cache

/* So long a page waits for the network before it takes the copy, in ms; after it nobody in a bay believes that anything will come. Ours. */
const PATIENCE = 3000;
const SINCE = "x-undertrim-kept";
const AT_ONCE = 6;

/* By the client that a page became: since when the copy that it was given is kept, and what the network has by now. */
/** @type {Map<string, { since: number, pinned: boolean, network: Promise<string> }>} */
const given = new Map();

/* The file that an address leads to. */
function plain(address) { return address.replace(/[?#].*$/, "").replace(/\/$/, "/index.html"); }

/* The vehicle of a page, behind the folder of its language where that is not the first. */
function vehicleOf(address) {
  const found = /^([\w-]+\/|)vehicles\/([\w-]+\/[\w-]+)[.\w]*\.html$/.exec(plain(address).slice(root.length));
  return found ? found[1] + found[2] : "";
}

async function stamped(response) {
  const headers = new Headers(response.headers);
  headers.set(SINCE, String(Date.now()));
  return new Response(await response.blob(), { status: response.status, statusText: response.statusText, headers });
}

async function put(name, address, response) { await (await caches.open(name)).put(plain(address), await stamped(response)); }
async function found(name, address) { return await caches.has(name) ? (await caches.open(name)).match(plain(address)) : undefined; }
function since(response) { return Number(response.headers.get(SINCE)) || 0; }

async function remembered(place) {
  const there = await found(KEPT, place);
  return there ? there.json() : {};
}

async function remember(place, data) { await put(KEPT, place, new Response(JSON.stringify(data))); }

function late(after) { return new Promise((resolve) => { setTimeout(() => { resolve(null); }, after); }); }

/* The pinned copies of a page's vehicle, and of all that such a page loads. */
async function pinnedFor(event) {
  const own = vehicleOf(event.request.url);
  if (own) return PINNED + own;
  const client = event.clientId && await worker.clients.get(event.clientId);
  return client && vehicleOf(client.url) ? PINNED + vehicleOf(client.url) : "";
}

async function answer(event) {
  const address = event.request.url, page = event.request.mode === "navigate", pin = await pinnedFor(event);
  const stays = pin && await found(pin, address);
  if (stays) {
    if (page) note(event, stays, true, compare(event, stays.clone()));
    return stays;
  }
  const coming = asked(event.request, page).then((got) => {
    if (got.ok && got.status === 200) event.waitUntil(put(KEPT, address, got.clone()));
    return got;
  });
  event.waitUntil(coming.catch(() => { /* said below */ }));
  const copy = await found(KEPT, address);
  if (!copy) return page ? coming.catch(() => notKept(address)) : coming;
  const first = await Promise.race([coming.catch(() => null), late(PATIENCE)]);
  if (first) return first;
  if (page) note(event, copy, false, Promise.resolve("nothing"));
  return copy;
}

/* In the place of a page that is neither kept nor to be had: one that says what to do. */
async function notKept(address) {
  const told = `${root}${(await remembered(CHOICES)).place || ""}not-kept.html`;
  if (plain(address) === told || !await found(KEPT, told)) return Response.error();
  return Response.redirect(`${told}?page=${encodeURIComponent(address.slice(root.length))}`);
}

/* Always asks the server whether there is something newer. A page may come from nowhere but its own address, says the browser. */
async function asked(request, page) {
  if (!page) return fetch(request, { cache: "no-cache" });
  const got = await fetch(request.url, { cache: "no-cache", credentials: "same-origin" });
  return got.redirected ? new Response(got.body, { status: got.status, statusText: got.statusText, headers: got.headers }) : got;
}

function note(event, copy, pinned, network) {
  given.set(event.resultingClientId || event.clientId, { since: since(copy), pinned, network });
  event.waitUntil(network);
}

/* What the network has in the place of what is pinned: the same, something newer, or no answer in time. */
async function compare(event, pinned) {
  try {
    const now = await Promise.race([fetch(plain(event.request.url), { cache: "no-cache" }), late(PATIENCE)]);
    if (!now || !now.ok) return "nothing";
    return await now.text() === await pinned.text() ? "the same" : "newer";
  } catch (error) { return "nothing"; }
}

async function about(client) {
  const one = given.get(client);
  return one ? { ...one, network: await one.network } : null;
}

/* Some at a time. Who does not come stays as it was. */
async function fetchAll(addresses, kept) {
  const left = Array.from(addresses);
  const one = async () => {
    for (let address = left.shift(); address; address = left.shift()) {
      try {
        const got = await fetch(root + address, { cache: "no-cache" });
        if (got.ok) {
          await put(KEPT, root + address, got);
          kept(address);
        }
      } catch (error) { /* next time */ }
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, one));
}

async function listed(name) { return (await fetch(root + name, { cache: "no-cache" })).json(); }

/* The list of a make is fetched again only where it changed: each page that opens asks for what is wanted. */
async function ofMake(language, make, mark) {
  const place = `${root}keeper/list-of-${language}${make}`, before = await remembered(place);
  if (before.mark === mark) return before.list;
  /** @type {KeeperMake} */
  const list = await listed(`${language}keeper/${make}.json`);
  await remember(place, { mark, list });
  return list;
}

/* Everything that is to be kept, by name with its mark: what all languages share, and the one that the reader wants. */
async function wanted() {
  const choices = await remembered(CHOICES), language = choices.place || "";
  /** @type {KeeperList} */
  const list = await listed(language + "keeper/list.json");
  const files = choices.all ? { ...list.files, ...list.desk } : { ...list.files };
  for (const make of Object.keys(list.makes)) {
    const mine = choices.all || choices["make:" + make];
    const cars = Object.keys(choices).filter((one) => one.startsWith(`car:${make}/`)).map((one) => one.slice(4));
    if (!list.whole && !mine && !cars.length) continue;
    const own = await ofMake(language, make, list.makes[make]);
    const asked = (path, more) => mine || (!more && list.whole) || cars.some((car) => new RegExp(`^(?:[\\w-]+/|)(?:vehicles|shelf)/${car}[.-]`).test(path));
    Object.entries(own.pages).filter(([path]) => asked(path, false)).forEach(([path, mark]) => { files[path] = mark; });
    Object.entries(own.more).filter(([path]) => asked(path, true)).forEach(([path, mark]) => { files[path] = mark; });
  }
  return files;
}

/** @type {Promise<void>} */
let filling = Promise.resolve();

/* One after the other: what was chosen while an earlier one was at work, another language say, is no part of that one. */
function fill() {
  filling = filling.catch(() => { /* whoever asked for it knows */ }).then(fetchLacking);
  return filling;
}

/* Fetches what is not there yet as it should be. */
async function fetchLacking() {
  const files = await wanted(), marks = await remembered(MARKS);
  const lacking = Object.keys(files).filter((name) => marks[name] !== files[name]);
  await fetchAll(lacking, (name) => { marks[name] = files[name]; });
  await drop(Object.keys(marks).filter((name) => !(name in files)), marks);
  await remember(MARKS, marks);
}

/* What is no longer wanted makes room. */
async function drop(names, marks) {
  const cache = await caches.open(KEPT);
  for (const name of names) {
    await cache.delete(root + name);
    delete marks[name];
  }
}

/* What is in the way of being whole: nothing, or so many files that are still lacking. */
async function standing() {
  try {
    const files = await wanted(), marks = await remembered(MARKS);
    return { kept: Object.keys(files).filter((name) => marks[name] === files[name]).length, of: Object.keys(files).length };
  } catch (error) { return null; }
}

async function pin(vehicle, addresses) {
  const name = PINNED + vehicle;
  if (await caches.has(name)) return;
  for (const address of addresses.map(plain)) {
    const there = await found(KEPT, address) || await fetch(address).catch(() => null);
    if (there && there.ok) await put(name, address, there);
  }
}

async function unpin(vehicle) {
  const here = (await caches.keys()).filter((name) => name.startsWith(PINNED) && name.slice(PINNED.length).endsWith(vehicle));
  await Promise.all(here.map((name) => caches.delete(name)));
}

/* In which language to keep the site. */
async function read(place) {
  const choices = await remembered(CHOICES);
  if ((choices.place || "") !== place) await remember(CHOICES, { ...choices, place });
}

async function choose(what, on) {
  const choices = await remembered(CHOICES);
  if (on) choices[what] = true;
  else delete choices[what];
  await remember(CHOICES, choices);
  await fill();
}

const ASKED = {
  about: (_, client) => about(client),
  fill: async ({ place }) => { if (place !== undefined) await read(place); await fill(); return standing(); },
  pin: ({ vehicle, addresses }) => pin(vehicle, addresses),
  unpin: ({ vehicle }) => unpin(vehicle),
  choices: () => remembered(CHOICES),
  choose: async ({ what, on }) => { await choose(what, on); return standing(); },
};

worker.addEventListener("install", (event) => { event.waitUntil(worker.skipWaiting()); });
worker.addEventListener("activate", (event) => { event.waitUntil(worker.clients.claim()); });
worker.addEventListener("fetch", (event) => {
  const address = event.request.url;
  const own = event.request.method === "GET" && address.startsWith(root) && !/^(?:[\w-]+\/|)keeper/.test(plain(address).slice(root.length));
  if (own) event.respondWith(answer(event));
});
worker.addEventListener("message", (event) => {
  const work = Promise.resolve(ASKED[event.data.ask](event.data, event.source.id)).catch(() => null);
  event.waitUntil(work.then((found) => { if (event.ports[0]) event.ports[0].postMessage(found === undefined ? true : found); }));
});
