/* The page of a piece of gear: into which openings of the collection it goes, worked out here, make by make, so that the page answers while it reckons. */

import { byId, make } from "./elements.js";
import "./gear-not-so.js";
import { use } from "./fit-place.js";
import { SIGNS } from "./fit-signs.js";
import { inOrder, inVehicle } from "./gear-places.js";
import { ask, load } from "./shelf.js";
import { tryIt } from "./tried.js";
import { say } from "./words.js";

/** @import { PlaceVehicle } from "published" */
/** @import { Found } from "./gear-places.js" */

const BASE = /** @type {HTMLScriptElement} */ (document.currentScript).src.replace(/assets\/undertrim\/[^/]*$/, "");
const MOST_AT_ONCE = 200; // vehicles that are looked at without being asked: some seconds on a phone. A default of ours.

const spot = byId("ut-places");
/** @type {Record<string, [string, string, number][]>} slices by kind: name, make, how many vehicles */
let listed = {};
/** @type {Record<string, PlaceVehicle[]>} */
const slices = {};
/** @type {Found[]} */
let found = [];

window.undertrimPlaces = (name, data) => {
  if (Array.isArray(data)) slices[name] = data;
  else listed = data;
};

const status = make("p", { role: "status" }), choice = make("p", {}), list = make("div", {});
const command = () => `undertrim fit --everywhere ${spot.dataset.gear}`;

function line(place) {
  const where = say("everywhere/place", { vehicle: place.title, opening: place.name }), address = place.vehicle.split("/").map(encodeURIComponent).join("/");
  const visit = `?jobs=${encodeURIComponent(place.written)}&${encodeURIComponent(place.written)}=${encodeURIComponent(spot.dataset.gear)}`;
  return make("li", {}, make("a", { "class": "ut-goes", href: `${BASE}vehicles/${address}.html${visit}` }, make("b", {}, place.cars ? say("fit-shown/for", { title: where, cars: place.cars }) : where), make("span", {}, place.headline), ...place.seen.map((one) => make("span", { class: "ut-tried" }, one))), " ", tryIt({ id: spot.dataset.gear, name: spot.dataset.name, kind: spot.dataset.kind }, { vehicle: place.vehicle, opening: place.written, place: where, car: {} }));
}

function show() {
  const verdicts = [...new Set(inOrder(found).map((place) => place.verdict))];
  list.replaceChildren(...verdicts.flatMap((verdict) => {
    const there = inOrder(found).filter((place) => place.verdict === verdict);
    return [make("h3", {}, make("span", { "aria-hidden": "true" }, SIGNS[verdict]), " " + say("everywhere/verdict", { verdict: there[0].words, count: there.length })), make("ul", { "class": "ut-goes-list" }, ...there.map(line))];
  }));
}

/* One slice after the other; the screen is free between them. */
async function look(wanted) {
  const own = round;
  const every = wanted.reduce((sum, one) => sum + one[2], 0);
  let done = 0;
  for (const [name, , count] of wanted) {
    await load(`places/${name}.js`);
    const shelf = await ask([spot.dataset.kind, ...new Set(slices[name].flatMap((vehicle) => vehicle.openings).flatMap((opening) => opening.between))]);
    if (own !== round) return; // another make was chosen
    use(shelf);
    const gear = shelf.stock.find((item) => item.id === spot.dataset.gear);
    found = found.concat(slices[name].flatMap((vehicle) => inVehicle(vehicle, gear, shelf)));
    done += count;
    status.textContent = done < every ? say("gear-page/looking", { done: String(done), count: every }) : "";
    show();
    await new Promise((resolve) => { setTimeout(resolve); });
  }
  status.textContent = found.length ? say("gear-page/looked", { count: every }) : say("everywhere/nowhere");
}

function missing() { status.textContent = say("gear-page/missing", { command: command() }); }

/* Of a large collection one make at a time, or all of it when somebody asks. */
function choose(every, begin) {
  const makes = [...new Set(every.map((one) => one[1]))].sort();
  const select = make("select", { id: "ut-which-make", change: (event) => { begin(every.filter((one) => !event.target.value || one[1] === event.target.value)); } },
    ...makes.map((name) => make("option", { value: name }, name)), make("option", { value: "" }, say("gear-page/every-make")));
  choice.replaceChildren(make("label", { "for": "ut-which-make" }, say("gear-page/which-make")), " ", select);
  begin(every.filter((one) => one[1] === makes[0]));
}

let round = 0;

async function start() {
  await load("places/start.js");
  const every = listed[spot.dataset.kind] || [];
  const begin = (wanted) => {
    round += 1;
    found = [];
    look(wanted).catch(missing);
  };
  if (every.reduce((sum, one) => sum + one[2], 0) > MOST_AT_ONCE) choose(every, begin);
  else begin(every);
}

if (spot) {
  spot.append(choice, status, list, make("p", {}, make("small", {}, say("gear-page/same", { command: command() }))));
  start().catch(missing);
}
