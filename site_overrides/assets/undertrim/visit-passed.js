/* A visit that goes from one device to another: in an address while that is short, or in a file. It goes where a person sends it. */

import { make } from "./elements.js";
import { fromText, takeOver } from "./visits.js";

/** @import { Kept } from "./visits.js" */

const BEGIN = "#take=";

/* An address that people can send; what is longer goes as a file. */
const LONGEST = 4000;

/* RFC 4648, section 5: letters that stand in an address as they are. */
function encoded(bytes) { return btoa(String.fromCharCode(...bytes)).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, ""); }
function decoded(text) { return Uint8Array.from(atob(text.replace(/-/g, "+").replace(/_/g, "/")), (one) => one.charCodeAt(0)); }

async function through(bytes, stream) {
  return new Uint8Array(await new Response(new Blob([bytes]).stream().pipeThrough(stream)).arrayBuffer());
}

/**
 * The address at which another device takes a visit up; empty where it would be too long, or the browser packs nothing.
 * @param {Kept} kept
 */
export async function addressOf(kept, page = location.href) {
  try {
    const packed = encoded(await through(new TextEncoder().encode(JSON.stringify(kept)), new CompressionStream("deflate-raw")));
    const whole = page.replace(/[?#].*$/, "") + BEGIN + packed;
    return whole.length <= LONGEST ? whole : "";
  } catch (error) { return ""; }
}

/* A visit in the address of this page is taken up: the visit, or null where the address has none that can be read. */
export async function arrived(hash = location.hash) {
  if (!hash.startsWith(BEGIN)) return null;
  try {
    const got = fromText(new TextDecoder().decode(await through(decoded(hash.slice(BEGIN.length)), new DecompressionStream("deflate-raw"))));
    return got && takeOver(got);
  } catch (error) { return null; }
}

/* Whether the address brings a visit at all. */
export function brings(hash = location.hash) { return hash.startsWith(BEGIN); }

/**
 * Has the browser save something as a file.
 * @param {string} name
 * @param {string} type
 * @param {BlobPart} content
 */
export function save(name, type, content) {
  const address = URL.createObjectURL(new Blob([content], { type }));
  make("a", { href: address, download: name }).click();
  setTimeout(() => { URL.revokeObjectURL(address); }, 60000); // some browsers begin to read it late
}

/** @param {Kept} kept */
export function fileName(kept, ending) {
  const plain = (text) => text.normalize("NFKD").replace(/[^\w-]+/g, "-").replace(/^-+|-+$/g, "").toLowerCase();
  return [kept.vehicle.split("/")[1], plain(kept.name)].filter(Boolean).join("-") + ending;
}

/* The visit in a file, taken up; null where there is none. */
export async function fromFile(file) {
  const got = fromText(await file.text());
  return got && takeOver(got);
}
