/* The one text of a visit, as it stands behind the `?` of an address: read and written as by derive/visit/text.py and understanding.py.
   What is no word of the vehicle is given back as it was typed. Gear is kept as it is named: the stock is not looked at here. */

import { matches } from "./concerns.js";

/** @import { ChosenTarget, Choosing } from "published" */
/** @typedef {{ jobs: string[], car: Record<string, string>, gear: Record<string, Record<string, string>>, unread: string[] }} Visit */

const JOBS = "jobs", CHOICE = "choice", GEAR = "gear", SOME = "some";

/* Unreserved letters stay, and of the others those that a visit uses for itself (RFC 3986, sections 2.1 and 3.4). */
function encoded(text, plain) {
  return Array.from(text).map((one) => /[\w.~-]/.test(one) || plain.includes(one) ? one
    : encodeURIComponent(one).replace(/[!'()*]/, (each) => "%" + each.charCodeAt(0).toString(16).toUpperCase())).join("");
}

/* Its own: a word may be called as something that every object has. */
function has(object, name) { return Object.prototype.hasOwnProperty.call(object, name); }

function decoded(text) { return text.replace(/(?:%[0-9A-Fa-f]{2})+/g, decodeURIComponent); }

/**
 * What may name a target: itself, its opening at every side, and the same by the id that the opening is written under.
 * @param {Choosing} known
 * @param {ChosenTarget} target
 */
function names(known, target) {
  const written = known.words.written[target.opening];
  return [target.id, target.opening, target.side ? `${written}@${target.side}` : written, written];
}

/**
 * The targets of a job, by id: of an opening that is written once for several kinds of car those that can be meant.
 * @param {Choosing} known
 */
function wanted(known, job, car) {
  const found = known.targets.filter((target) => names(known, target).includes(job));
  const there = found.filter((target) => matches(target.clauses, car));
  const several = found.some((target) => job !== target.id && job !== target.opening);
  return (several && there.length ? there : found).map((target) => target.id);
}

/* Each piece with its word and values; one that is no such piece is unread. */
function pieces(text, unread) {
  return text.split("&").filter(Boolean).map((piece) => {
    const at = piece.indexOf("=");
    try {
      if (at > 0) return { piece, word: decoded(piece.slice(0, at)), values: piece.slice(at + 1).split(",").map(decoded) };
    } catch (error) { /* no letters: said below */ }
    unread.push(piece);
    return { piece, word: "", values: [] };
  }).filter((one) => one.word);
}

/**
 * What a word names, and as what; no role for nothing.
 * @param {Choosing} known
 */
function named(known, word) {
  const dot = word.indexOf("."), name = dot < 0 ? word : word.slice(0, dot), role = dot < 0 ? "" : word.slice(dot + 1);
  if (role === CHOICE || role === GEAR) return { name, role };
  const choice = has(known.words.variants, name), opening = has(known.words.between, name);
  if (role) return { name, role: opening && known.words.between[name].includes(role) ? role : "" };
  return { name, role: choice === opening ? "" : choice ? CHOICE : GEAR };
}

/**
 * The visit that a text asks for, as far as it is one to this vehicle.
 * @param {string} text
 * @param {Choosing} known
 * @returns {Visit}
 */
export function read(text, known) {
  /** @type {Visit} */
  const visit = { jobs: [], car: {}, gear: {}, unread: [] };
  const every = pieces(text, visit.unread), words = every.filter((one) => one.word !== JOBS)
    .map((one) => ({ ...named(known, one.word), piece: one.piece, value: one.values.join(",") }));
  words.filter((one) => one.role === CHOICE).forEach((one) => { answer(visit, known, one); });
  const jobs = every.filter((one) => one.word === JOBS).flatMap((one) => one.values);
  const gear = words.filter((one) => one.role && one.role !== CHOICE);
  work(visit, known, jobs.length ? jobs : gear.map((one) => one.name));
  gear.forEach((one) => { fit(visit, known, one); });
  words.filter((one) => !one.role).forEach((one) => { visit.unread.push(one.piece); });
  return visit;
}

function answer(visit, known, { name, value, piece }) {
  const choices = has(known.words.variants, name) ? known.words.variants[name] : [];
  if (!choices.includes(value) || (has(visit.car, name) && visit.car[name] !== value)) visit.unread.push(piece);
  else visit.car[name] = value;
}

/** @param {Choosing} known */
function work(visit, known, jobs) {
  const found = new Set();
  jobs.forEach((job) => {
    const meant = wanted(known, job, visit.car);
    const there = meant.filter((id) => matches(known.targets.find((target) => target.id === id).clauses, visit.car));
    if (there.length < meant.length || !meant.length) visit.unread.push(`${JOBS}=${encoded(job, "@/")}`);
    there.forEach((id) => found.add(id));
  });
  visit.jobs = known.targets.map((target) => target.id).filter((id) => found.has(id));
}

/* Gear into every form of an opening that is worked at, or what stands between there. */
function fit(visit, known, { name, role, value, piece }) {
  const forms = worked(visit, known).filter((id) => has(known.words.between, id)).filter((id) => id === name || known.words.written[id] === name);
  const taken = forms.some((id) => ((visit.gear[id] || {})[role] || value) !== value);
  if (!forms.length || taken || !value) visit.unread.push(piece);
  else if (value !== SOME) forms.forEach((id) => { visit.gear[id] = { ...visit.gear[id], [role]: value }; });
}

/** @param {Choosing} known */
function worked(visit, known) {
  const openings = known.targets.filter((target) => visit.jobs.includes(target.id)).map((target) => target.opening);
  return Object.keys(known.words.written).filter((id) => openings.includes(id));
}

/**
 * The text of a visit: what is the same is written the same, whatever order it was asked in.
 * @param {Visit} visit
 * @param {Choosing} known
 */
export function write(visit, known) {
  const shared = (name) => name === JOBS || (has(known.words.variants, name) && has(known.words.between, name));
  const said = [[JOBS, listed(jobs(visit, known))]];
  Object.keys(known.words.variants).filter((name) => has(visit.car, name)).forEach((name) => {
    said.push([shared(name) ? `${name}.${CHOICE}` : name, listed([visit.car[name]])]);
  });
  fitted(visit, known).forEach(([name, role, value]) => {
    said.push([role === GEAR && !shared(name) ? name : `${name}.${role}`, listed(value.split(","))]);
  });
  return said.filter(([, value]) => value).map(([word, value]) => `${encoded(word, "@,/")}=${value}`).join("&");
}

function listed(values) { return values.map((value) => encoded(value, "@/")).join(","); }

/* The openings worked at, by the widest names that mean no more: every side before each side, all forms of such a car before each form. */
function jobs(visit, known) {
  const left = new Set(visit.jobs), found = [];
  wide(visit, known).forEach((name) => {
    const meant = wanted(known, name, visit.car);
    if (!meant.every((id) => left.has(id))) return;
    found.push(name);
    meant.forEach((id) => left.delete(id));
  });
  return found;
}

/** @param {Choosing} known */
function wide(visit, known) {
  const every = worked(visit, known).map((id) => known.words.written[id]);
  return [...new Set([...new Set(every)].flatMap((written) => {
    const at = known.targets.filter((target) => visit.jobs.includes(target.id) && known.words.written[target.opening] === written);
    const own = at.map((target) => names(known, target));
    return [written, ...own.map((all) => all[2]), ...own.map((all) => all[1]), ...own.map((all) => all[0])];
  }))];
}

/* Gear and what stands between, by the id an opening is written under where the same is chosen for all its forms that are worked at. */
function fitted(visit, known) {
  const every = worked(visit, known);
  return [...new Set(every.map((id) => known.words.written[id]))].flatMap((written) => {
    const ids = every.filter((id) => known.words.written[id] === written);
    const held = ids.map((id) => visit.gear[id] || {});
    return roles(held).flatMap((role) => {
      const values = held.map((each) => role === GEAR ? each[role] || "" : (each[role] || "").split(",").sort().join(","));
      const alike = values.every((value) => value === values[0]);
      return alike ? [[written, role, values[0]]] : ids.map((id, at) => [id, role, values[at]]);
    });
  });
}

/* Gear first, then what stands between by its kind; those of the first form before those of the next. */
function roles(held) {
  const order = (each) => Object.keys(each).sort((a, b) => Number(b === GEAR) - Number(a === GEAR) || (a < b ? -1 : 1));
  return [...new Set(held.flatMap(order))];
}
