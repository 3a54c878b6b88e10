/* The options that the finder offers: vehicles, each with what tells whether it is this car, and what else the site has. Each is a link. */

import { make } from "./elements.js";
import { silhouette } from "./finder-bodies.js";
import { BASE } from "./keeper-asked.js";
import { bodies } from "./finder-telling.js";
import { isOf } from "./finder-vin.js";
import { list, say } from "./words.js";

/** @import { FinderRow } from "published" */
/** @import { Hit } from "./finder-match.js" */
/** @import { Found } from "./finder-more.js" */
/** @import { Query } from "./finder-query.js" */

const FULL = 3; // of so many each says how to tell it

let number = 0;

function option(href, kind, ...inside) {
  number += 1;
  return make("a", { role: "option", "class": `ut-hit ut-hit-${kind}`, id: `ut-found-${number}`, href, tabindex: "-1" }, ...inside);
}

function line(kind, text) { return make("span", { "class": `ut-hit-${kind}` }, text); }

/* The address of a visit: its jobs, and what is known of the car. */
function visit(hit) {
  const pairs = [...(hit.jobs.length ? [["jobs", hit.jobs]] : []), ...Object.entries(hit.car).map(([name, value]) => [name, [value]])];
  const text = pairs.map(([name, values]) => `${encodeURIComponent(name)}=${values.map((value) => encodeURIComponent(value).replace(/%40/g, "@")).join(",")}`).join("&");
  return text && "?" + text;
}

function years(row) { return row[3] === row[4] ? String(row[3]) : `${row[3]}–${row[4]}`; }

/** @param {FinderRow} row */
function about(row) {
  const sides = row[10].length > 1 ? say("finder/either-side") : row[10].map((side) => say(`drive-side/${side}`)).join("");
  return list([say("finder/built-capital", { from: row[7], to: row[8] }), list(bodies(row), "or"), sides].filter(Boolean), "comma");
}

/* What is opened with it: what to do, and which car it is known to be. */
function opens(hit, asked) {
  const jobs = hit.row[12].filter(([id]) => hit.jobs.includes(id)).map(([, name]) => name);
  const side = hit.car["drive-side"], body = hit.car.body;
  const told = hit.row[13].filter(([pattern, , words]) => words && asked.number && isOf(asked.number, pattern)).map(([, , words]) => words);
  const car = told.length ? told : [...(side ? [say(`drive-side/${side}`)] : []), ...(body ? [say("vehicle-page/body-shape", { body: say(`body/${body}`) })] : [])];
  return [...(car.length ? [say("finder/this-car", { car: list(car, "comma") })] : []), ...(jobs.length ? [say("finder/opens", { jobs: list(jobs, "semicolon") })] : [])];
}

/**
 * @param {Query} asked
 * @param {Hit[]} hits
 * @param {Map<FinderRow, string>} answers what each answers to the question that is asked
 */
export function vehicles(asked, hits, answers) {
  return hits.map((hit) => {
    const { row } = hit, full = hits.length <= FULL;
    const name = make("span", { "class": "ut-hit-name" }, make("b", {}, row[1] + " " + row[2]), " ", make("span", { "class": "ut-years" }, years(row) + (row[5] ? " " + row[5] : "")));
    const lines = [...(answers.has(row) ? [line("answer", answers.get(row))] : []), name, ...(row[14] ? [line("whose", row[14])] : []), ...(full && row[7] ? [line("about", about(row))] : []),
      ...(full && row[11] ? [line("tell", say("finder/tell", { tell: row[11] }))] : []), ...(full ? opens(hit, asked).map((words) => line("opens", words)) : [])];
    return option(`${BASE}vehicles/${row[0].split("/").map(encodeURIComponent).join("/")}.html${visit(hit)}`, "vehicle", silhouette(row[9][0]), make("span", { "class": "ut-hit-words" }, ...lines));
  });
}

/**
 * @param {Found[]} found
 * @param {(found: Found) => string} address
 */
export function others(found, address) {
  return found.map((one) => option(address(one), one.entry[0], make("span", { "class": "ut-hit-words" }, make("span", { "class": "ut-hit-name" }, make("b", {}, one.entry[1])), ...(one.entry[2] ? [line("about", one.entry[2])] : []))));
}

/**
 * Options under a heading.
 * @param {string} id
 * @param {string} title
 * @param {HTMLElement[]} options
 */
export function group(id, title, options) {
  return options.length ? [make("div", { role: "group", "aria-labelledby": id }, make("div", { "class": "ut-group", id, role: "presentation" }, title), ...options)] : [];
}
