/* Photographs of claims, kept on this device beside them until they leave: made small, and without the place and the camera that the file of a
   phone names, since only what is to be seen is drawn anew. */

import { claims } from "./claims.js";

const NAME = "undertrim", STORE = "photos";
/* Longest side in pixels, and how much is kept of the picture's fineness. Ours: a contact's number is still read. */
const LONGEST = 1600, FINENESS = 0.82;
export const TYPE = "image/jpeg";

/** @returns {Promise<IDBDatabase>} */
function opened() {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open(NAME, 1);
    asked.onupgradeneeded = () => { asked.result.createObjectStore(STORE); };
    asked.onsuccess = () => { resolve(asked.result); };
    asked.onerror = () => { reject(asked.error); };
  });
}

/**
 * Does something with the store and waits for it.
 * @param {IDBTransactionMode} mode
 * @param {(store: IDBObjectStore) => IDBRequest} work
 * @returns {Promise<any>}
 */
async function stored(mode, work) {
  const base = await opened();
  try {
    return await new Promise((resolve, reject) => {
      const going = base.transaction(STORE, mode), asked = work(going.objectStore(STORE));
      going.oncomplete = () => { resolve(asked.result); };
      going.onerror = going.onabort = () => { reject(going.error); };
    });
  } finally { base.close(); }
}

/**
 * The picture of a file as it is kept. Rejects where the browser cannot read it.
 * @param {Blob} file
 * @returns {Promise<Blob>}
 */
export async function small(file) {
  const picture = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return new Promise((resolve, reject) => { canvas.toBlob((made) => { if (made) resolve(made); else reject(new Error(TYPE)); }, TYPE, FINENESS); });
}

/** @param {string} name @param {Blob} picture */
export function keepPhoto(name, picture) { return stored("readwrite", (store) => store.put(picture, name)); }

/** @param {string} name @returns {Promise<Blob | undefined>} */
export function photo(name) { return stored("readonly", (store) => store.get(name)); }

/**
 * A name for the photograph of a fact, which no other on the device has.
 * @param {string} about
 */
export function nameFor(about) {
  const stem = about.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "").slice(0, 60).replace(/-$/, "");
  const taken = claims().map((one) => one.photo && one.photo.file);
  let number = 1;
  while (taken.includes(`${stem}-${number}.jpg`)) number += 1;
  return `${stem}-${number}.jpg`;
}

/* All that claims name, as files. One that is no longer there is left out: its claim is worth sending without it. */
export async function photoFiles() {
  const names = claims().map((one) => one.photo && one.photo.file).filter(Boolean);
  const found = await Promise.all(names.map(async (name) => ({ name, picture: await photo(name).catch(() => undefined) })));
  return found.filter((one) => one.picture).map((one) => new File([one.picture], one.name, { type: TYPE }));
}

/* What no claim names any more goes. */
async function tidy() {
  const named = new Set(claims().map((one) => one.photo && one.photo.file));
  const there = await stored("readonly", (store) => store.getAllKeys());
  await Promise.all(there.filter((name) => !named.has(name)).map((name) => stored("readwrite", (store) => store.delete(name))));
}

document.addEventListener("ut-claims", () => { tidy().catch(() => { /* the next time */ }); });
