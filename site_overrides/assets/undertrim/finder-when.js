/* What is typed of a time: years, months of build and ranges of them. Months are counted from year 0; every span is half-open. */

import { list, say } from "./words.js";

function year(text) {
  if (/^(19|20)\d\d$/.test(text)) return Number(text);
  if (!/^'?\d\d$/.test(text)) return null;
  const two = Number(text.slice(-2));
  return two > 60 ? 1900 + two : 2000 + two;
}

function month(text) { return /^(0?[1-9]|1[0-2])$/.test(text) ? Number(text) : null; }

function years(first, last) { return { from: first * 12, to: (last + 1) * 12, months: false, words: first === last ? String(first) : say("finder/years", { first: String(first), last: String(last) }) }; }

function oneMonth(of, which) {
  const at = of * 12 + which - 1;
  return { from: at, to: at + 1, months: true, words: of + "-" + String(which).padStart(2, "0") };
}

/* The times that one word may mean: "16" one, "05-16" two (May 2016, and 2005 to 2016), "finch" none. */
export function read(word) {
  const alone = year(word);
  if (alone !== null) return [years(alone, alone)];
  const parts = word.split(/[-/.–—]/);
  if (parts.length !== 2) return [];
  const first = year(parts[0]), last = year(parts[1]), found = [];
  const monthFirst = month(parts[0]) && parts[1].length === 4; // "04/2016" is April 2016 and not from 2004 on
  if (first !== null && last !== null && first <= last && !monthFirst) found.push(years(first, last));
  if (first !== null && month(parts[1]) && !(found.length && parts[1].length === 4)) found.push(oneMonth(first, month(parts[1])));
  if (last !== null && month(parts[0])) found.push(oneMonth(last, month(parts[0])));
  return found;
}

/* Words apart; a month and its year, or two years, stay together: "05 / 2016", "2014 to 2018". */
export function split(text) {
  const joined = text.replace(/(^|[\s,;])('?\d{1,4})\s*(?:[-–—/]|to|until)\s*('?\d{1,4})(?=$|[\s,;])/g, (all, before, one, other) => read(one + "-" + other).length ? before + one + "-" + other : all);
  return joined.split(/[\s,;/]+/).filter(Boolean);
}

function count(text) {
  const parts = text.split("-").map(Number);
  return parts[0] * 12 + parts[1] - 1;
}

/* Whether a vehicle is of one of the times: by model years for years, by months of build for months. */
export function holds(times, row) {
  return times.some((time) => {
    const known = time.months && row[7] ? [count(row[7]), count(row[8])] : [row[3] * 12, (row[4] + 1) * 12];
    return time.from < known[1] && known[0] < time.to;
  });
}

function span(row, months) {
  if (months && row[7]) return say("finder/built", { from: row[7], to: row[8] });
  return row[3] === row[4] ? String(row[3]) : say("finder/years", { first: String(row[3]), last: String(row[4]) });
}

/* What is recorded where no vehicle is of the time asked for: "No Finch of 2020; recorded: 2014 to 2018". */
export function recorded(rows, times) {
  const months = times.some((time) => time.months);
  const models = {};
  rows.forEach((row) => {
    const name = row[1] + " " + row[2];
    models[name] = (models[name] || []).concat([row]);
  });
  const names = Object.keys(models).sort();
  const spans = names.map((name) => models[name].sort((a, b) => a[3] - b[3]).map((row) => span(row, months)).join(", "));
  const words = times[0].words;
  if (names.length === 1) return say("finder/no-such-time", { name: names[0], time: words, recorded: spans[0] });
  const shown = names.slice(0, 5).map((name, index) => name + " " + spans[index]);
  if (names.length > 5) shown.push(say("finder/and-more", { count: names.length - 5 }));
  return say("finder/none-of-time", { time: words, recorded: list(shown, "semicolon") });
}
