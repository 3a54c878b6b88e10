/* Whether a speaker or receiver goes into an opening: the same arithmetic, verdicts and words as `undertrim fit`, for gear that is typed.
   Lengths are { value, step, text, shown } in mm, "unknown" or "none", or null where nothing is recorded. Tests hold it against the program. */

import { both, round } from "./lengths.js";

/** @import { Face, FitNumber, Given, KitSizes, Load, Quantity, ReceiverPlace, ReceiverSizes, Shape, SpacerSizes, SpeakerPlace, SpeakerSizes, Usual } from "published" */

const DIGITS = 9;
const KINDS = ["fits", "fits-with", "marginal", "unknown", "does-not-fit"];
const WORST = ["fails", "unknown", "marginal", "fits"];

/* numbers with their uncertainty, and comparisons */

/**
 * @param {string} label
 * @param {number | null} value
 * @param {number} step
 * @param {string} text
 * @param {boolean} [usual]
 * @returns {FitNumber}
 */
function number(label, value, step, text, usual) {
  return { label, value, step, text, default: !!usual, less: 0, more: 0, lacking: false };
}

function known(label, value, step, usual) { return number(label, value, step || 0, both(value), usual); }

/**
 * @param {Given | undefined} value
 * @returns {value is Quantity}
 */
function isLength(value) { return value !== null && typeof value === "object"; }

/**
 * @param {string} label
 * @param {Given | undefined} value
 */
function typed(label, value) {
  if (isLength(value)) return number(label, value.value, value.step, value.shown);
  return number(label, null, 0, value === null || value === undefined ? "not recorded" : value);
}

function total(numbers) { return numbers.reduce((sum, one) => sum + (one.value || 0), 0); }

function remaining(have, need) { return round(have - need, DIGITS); }

function spread(numbers) { return hypot(numbers.map((one) => one.step)); }

function hypot(values) { return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0)); }

function made(name, title, verdict, words, more) {
  const base = { name, title, verdict, words, need: null, have: null, margin: null, uncertainty: null, numbers: [], missing: [], mend: "", unit: "mm" };
  return Object.assign(base, more || {});
}

function named(one) { return one.label + " (" + one.text + ")"; }

function untold(name, title, missing, numbers) {
  return made(name, title, "unknown", title + ": cannot be told without " + missing.join(" and "), { numbers: numbers || [], missing });
}

function judge(margin, uncertainty) {
  if (Math.abs(margin) < uncertainty) return "marginal";
  return margin >= 0 ? "fits" : "fails";
}

/**
 * Compares what is there with what is needed, in mm.
 * @param {string} name
 * @param {string} title
 * @param {FitNumber[]} have
 * @param {FitNumber[]} need
 * @param {string} [mend]
 */
function compare(name, title, have, need, mend) {
  const numbers = have.concat(need);
  if (numbers.some((one) => one.value === null)) {
    const missing = shifts(have, "less").concat(shifts(need, "more"))
      .filter((pair) => pair[0].value === null || (pair[0].lacking && pair[1])).map((pair) => named(pair[0]));
    return untold(name, title, missing, numbers);
  }
  const there = total(have), wanted = total(need);
  const base = { need: wanted, have: there, margin: remaining(there, wanted), uncertainty: round(spread(numbers), DIGITS), numbers, mend: mend || "" };
  return judged(made(name, title, "fits", "", base), have, need);
}

/* A fact that is lacking decides nothing where even its worst case leaves room: marginal. Where it may decide, nothing can be told. */
function judged(check, have, need) {
  const margin = check.margin, uncertainty = check.uncertainty;
  const taken = shifts(have, "less").concat(shifts(need, "more")), given = shifts(have, "more").concat(shifts(need, "less"));
  const said = changed(check, { words: check.title + ": " + amount(margin, uncertainty) });
  if (judge(remaining(margin, -sum(given)), uncertainty) === "fails") return changed(said, { verdict: "fails" });
  if (judge(remaining(margin, sum(taken)), uncertainty) === "fits") return capped(said, lacking(taken).length ? "measure: " + lacking(taken).join(" and ") : "");
  const doubtful = lacking(taken).length ? lacking(taken) : lacking(given);
  if (doubtful.length) return untold(check.name, check.title, doubtful, check.numbers);
  return changed(check, { verdict: "marginal", words: check.title + ": " + close(check, margin, uncertainty) });
}

/* By how much each number may still move a margin one way. */
function shifts(numbers, way) { return numbers.map((one) => [one, one[way]]); }

function sum(moved) { return moved.reduce((all, pair) => all + pair[1], 0); }

function lacking(moved) {
  return moved.filter((pair) => pair[0].lacking && pair[1]).map((pair) => named(pair[0]));
}

function close(check, margin, uncertainty) {
  const usual = check.numbers.filter((one) => one.less || one.more);
  if (Math.abs(margin) < uncertainty || !usual.length) return apart(margin) + ", within the uncertainty of " + both(uncertainty) + ": measure again, finer";
  const said = usual.map((one) => one.label + " is a usual value, " + both(one.value - one.less) + " to " + both(one.value + one.more));
  return amount(margin, uncertainty) + ", but " + said.join(" and ") + ": measure it";
}

function apart(margin) { return margin >= 0 ? both(margin) + " to spare" : both(-margin) + " short"; }

function uncertain(uncertainty) { return uncertainty ? ", ± " + both(uncertainty) : ""; }

function amount(margin, uncertainty) { return apart(margin) + uncertain(uncertainty); }

function changed(check, more) { return { ...check, ...more }; }

function capped(check, reason) {
  if (!reason || (check.verdict !== "fits" && check.verdict !== "marginal")) return check;
  return changed(check, { verdict: "marginal", words: check.words + "; " + reason });
}

function gap(check) {
  if (check.margin === null) return null;
  return check.margin + check.numbers.reduce((sum, one) => sum + (one.default ? one.value || 0 : 0), 0);
}

/* outlines */

/**
 * @param {string} what
 * @param {Shape | null} hole
 */
function outline(what, hole) {
  if (!hole || hole.shape === "round") {
    const across = typed(hole ? what + " diameter" : what, hole ? hole.diameter : null);
    return { shape: "round", width: across, height: across };
  }
  return { shape: hole.shape, width: typed(what + " width", hole.width), height: typed(what + " height", hole.height) };
}

/**
 * @param {string} what
 * @param {Face | null} face
 */
function rectangle(what, face) {
  return { shape: "rectangle", width: typed(what + " width", face ? face.width : null), height: typed(what + " height", face ? face.height : null) };
}

function posed(item, turned) { return turned ? { shape: item.shape, width: item.height, height: item.width } : item; }

function contain(name, title, inner, outer, room, mend) {
  room = room || [];
  if (inner.shape === "round" && outer.shape === "round") return [compare(name, title, [outer.width], [inner.width].concat(room), mend)];
  const more = corners(inner, outer, room);
  return [["across", inner.width, outer.width], ["up", inner.height, outer.height]].map((row) => compare(name + "-" + row[0], title + ", " + row[0], [row[2]], stretched(row[1], more, room).concat(room), mend));
}

function corners(inner, outer, room) {
  if (inner.shape !== "rectangle" || outer.shape === "rectangle") return 1;
  const extra = total(room);
  const shares = [[inner.width.value, outer.width.value], [inner.height.value, outer.height.value]]
    .filter((pair) => pair[0] !== null && pair[1]).map((pair) => (pair[0] + extra) / pair[1]);
  return shares.length === 2 && Math.max(shares[0], shares[1]) ? hypot(shares) / Math.max(shares[0], shares[1]) : 1;
}

function stretched(need, more, room) {
  if (need.value === null || more === 1) return [need];
  return [need, known("corners", (need.value + total(room)) * (more - 1), spread([need]) * (more - 1))];
}

/* bolt patterns */

function matchBolts(name, gear, car, play, what, pose) {
  const title = "Bolt holes of " + what;
  if (!gear || !car) {
    const missing = [["bolt holes of the gear", gear], ["bolt holes of " + what, car]]
      .filter((row) => !row[1]).map((row) => row[0] + " (not recorded)");
    return [untold(name, title, missing)];
  }
  if (!counts(gear, car)) return [made(name, title, "fails", title + ": " + car.count + " do not meet the " + gear.count + " of the gear", { mend: "adapter" })];
  const pairs = boltPairs(gear, car, pose.turned).map((row) => same(name, title + row[0], row[1], row[2], play));
  return pose.free ? pairs : pairs.concat(angleCheck(name, title, gear, car, play, pose.turned));
}

/* Where the holes are round the middle, for what is not round and cannot be turned at will. */
function angleCheck(name, title, gear, car, play, turned) {
  const rings = [["gear", gear], ["held by", car]].filter((row) => row[1].pattern === "circle");
  const firsts = rings.map((row) => typed("angle of the bolt circle (" + row[0] + ")", row[1].angle));
  const across = rings.map((row) => circle(row[0], row[1]));
  if (firsts.concat(across).some((one) => one.value === null)) return [compare(name + "-angle", title + ", angle", [play], firsts.concat(across), "adapter")];
  if (!rings.length) return [];
  const off = angleOff(gear, car, turned ? 90 : 0), radius = across[0].value / 2;
  const step = radius * hypot(firsts.map((one) => one.step)) * (Math.PI / 180);
  const gone = known("holes " + Number(round(off, 1)) + "° apart, along the circle", radius * (off * (Math.PI / 180)), step);
  return [compare(name + "-angle", title + ", angle", [play], [gone], "adapter")];
}

function angleOff(gear, car, turn) {
  let ours = angles(gear).map((angle) => angle + turn), theirs = angles(car);
  if (car.pattern === "rectangle" || (gear.pattern === "circle" && gear.count > car.count)) { const kept = ours; ours = theirs; theirs = kept; }
  const pitch = 360 / theirs.length;
  return Math.max(...ours.map((angle) => {
    const rest = (angle - theirs[0] + pitch / 2) % pitch;
    return Math.abs((rest < 0 ? rest + pitch : rest) - pitch / 2);
  }));
}

function angles(bolts) {
  const found = [];
  if (bolts.pattern === "circle") {
    for (let i = 0; i < bolts.count; i += 1) found.push((isLength(bolts.angle) ? bolts.angle.value : 0) + 360 * i / bolts.count);
    return found;
  }
  const size = (side) => isLength(side) ? side.value : 0;
  const corner = Math.atan2(size(bolts.width), size(bolts.height)) * (180 / Math.PI);
  return [corner, 180 - corner, 180 + corner, 360 - corner];
}

function counts(gear, car) {
  if (gear.pattern === "rectangle" && car.pattern === "rectangle") return gear.count === car.count;
  if (gear.pattern === car.pattern) return Math.max(gear.count, car.count) % Math.min(gear.count, car.count) === 0;
  const box = gear.pattern === "rectangle" ? gear : car, ring = box === gear ? car : gear;
  return box.count === 4 && ring.count >= 4 && ring.count % 2 === 0;
}

function boltPairs(gear, car, turned) {
  if (gear.pattern === "circle" && car.pattern === "circle") return [["", circle("gear", gear), circle("held by", car)]];
  if (gear.pattern === car.pattern) {
    const ours = sides("gear", gear), theirs = sides("held by", car);
    if (turned) ours.reverse();
    return [[", across", ours[0], theirs[0]], [", up", ours[1], theirs[1]]];
  }
  const box = gear.pattern === "rectangle" ? gear : car, ring = box === gear ? car : gear;
  return [[", diagonal", diagonal(box), circle("circle", ring)], [", round the circle", ...arcs(box, ring)]];
}

function circle(whose, bolts) { return typed("bolt circle (" + whose + ")", bolts.diameter); }

function sides(whose, bolts) { return [typed("bolt width (" + whose + ")", bolts.width), typed("bolt height (" + whose + ")", bolts.height)]; }

function diagonal(box) {
  const pair = sides("rectangle", box), width = pair[0], height = pair[1];
  if (width.value === null || height.value === null) return number("diagonal of the bolt rectangle", null, 0, "unknown");
  const long = hypot([width.value, height.value]);
  return known("diagonal of the bolt rectangle", long, long ? hypot([width.value * width.step, height.value * height.step]) / long : 0);
}

function arcs(box, ring) {
  const pair = sides("rectangle", box), across = circle("circle", ring);
  if (pair[0].value === null || pair[1].value === null || across.value === null) {
    const lost = number("bolt pattern", null, 0, "unknown");
    return [lost, lost];
  }
  const angle = 2 * Math.atan2(pair[1].value, pair[0].value), pitch = 2 * Math.PI / ring.count;
  const held = pitch * Math.max(1, round(angle / pitch, 0)), radius = across.value / 2;
  return [known("corners, along the circle", angle * radius, spread(pair)), known("holes, along the circle", held * radius)];
}

function same(name, title, gear, car, play) {
  if (gear.value === null || car.value === null) return compare(name, title, [play], [gear, car], "adapter");
  const gone = Math.abs(gear.value - car.value);
  const words = "difference between " + gear.label + " " + gear.text + " and " + car.label + " " + car.text;
  const check = compare(name, title, [play], [known(words, gone, spread([gear, car]))], "adapter");
  return check.verdict === "fails" ? changed(check, { words: title + ": " + both(gone) + " apart" + uncertain(check.uncertainty) }) : check;
}

/* how a speaker sits */

function seated(speaker, hold, usual, turned) {
  const flange = outline("flange", speaker.flange);
  return [].concat(
    through(speaker, hold, turned),
    covered(flange, hold, usual, turned),
    lying("Flange", flange, hold, turned),
    matchBolts("bolts", speaker.bolts, hold.bolts, usual.bolts, hold.what, { turned, free: allRound([speaker.basket, speaker.flange]) }));
}

function through(speaker, hold, turned) {
  return contain("hole", "Basket through the hole of " + hold.what, posed(outline("basket", speaker.basket), turned), outline("hole of " + hold.what, hold.hole));
}

function covered(flange, hold, usual, turned) {
  const twice = known(usual.overlap.label + " at both ends", 2 * (usual.overlap.value || 0), 0, true);
  return contain("flange", "Flange over the hole of " + hold.what, outline("hole of " + hold.what, hold.hole), posed(flange, turned), [twice], "adapter").map(opened);
}

function opened(check) {
  const free = gap(check);
  if (check.verdict !== "fails" || free === null) return check;
  const left = free < 0 ? both(-free / 2) + " open" : "only " + both(free / 2) + " of overlap";
  return changed(check, { words: check.title + ": " + left + " at each end" + uncertain(check.uncertainty / 2) + ", adapter plate needed" });
}

function lying(title, rim, hold, turned) {
  if (!hold.flat) return [];
  if (!hold.panel) return [untold("panel", title + " on the panel of " + hold.what, ["panel round the hole (not recorded)"])];
  return contain("panel", title + " on the panel of " + hold.what, posed(rim, turned), rectangle("panel", hold.panel));
}

function turnable(speaker) { return !allRound([speaker.basket, speaker.flange]) || !!(speaker.bolts && speaker.bolts.pattern === "rectangle"); }

/* Whether outlines are round, as far as they are recorded. */
function allRound(outlines) {
  const there = outlines.filter(Boolean);
  return there.length > 0 && there.every((one) => one.shape === "round");
}

/* depth behind, room before, spacers between */

/**
 * @param {SpeakerSizes} speaker
 * @param {SpeakerPlace} opening
 * @param {Usual} usual
 */
function roomFor(speaker, opening, usual) {
  const depth = opening.depth || { clear: "unknown", datum: "", over: "", to: "", obstruction: "", leans: null };
  return {
    clear: typed("clear depth", depth.clear),
    behind: [typed("mounting depth", speaker.depth)].concat(tilted(speaker, depth, usual.bounds), [rear(depth, usual)]),
    front: typed("room to the grille", opening.room_to_grille),
    before: [typed("protrusion of the cone", speaker.protrusion), usual.grille],
    gasket: gasket(speaker, usual.bounds),
    reason: [reason(depth, opening), unseen(opening)].filter(Boolean).join("; ")
  };
}

function gasket(speaker, bounds) {
  if (speaker.gasket === "none") return [];
  const found = typed("gasket, pressed flat", speaker.gasket);
  return [found.value === null ? between(found, bounds.gasket) : found];
}

/* A length that nobody recorded, from 0 to so many mm: reckoned as 0. */
function between(missing, most) { return changed(missing, { value: 0, more: most, lacking: true }); }

function tilted(speaker, depth, bounds) {
  const lean = depth.leans, what = (depth.to || "the thing behind").toLowerCase();
  if (lean === "none") return [];
  const magnet = typed("magnet diameter", speaker.magnet);
  if (!isLength(lean)) {
    const missing = typed("lean of " + what, lean);
    return magnet.value === null ? [missing, magnet] : [between(missing, magnet.value / 2 * Math.tan(bounds.lean * (Math.PI / 180)))];
  }
  if (magnet.value === null) return [magnet];
  const radius = magnet.value / 2, angle = lean.value * (Math.PI / 180), coarse = lean.step * (Math.PI / 180);
  const step = hypot([magnet.step / 2 * Math.tan(angle), radius * coarse / Math.pow(Math.cos(angle), 2)]);
  return [known("lean of " + what + ", " + lean.text + ", at the edge of the magnet", radius * Math.tan(angle), step)];
}

function rear(depth, usual) { return toGlass(depth) === "no" ? usual.rear : usual.rear_glass; }

/* Whether the window, or what moves with it, is the first thing behind; unknown where nobody recorded it. */
function toGlass(depth) {
  if (depth.over === "no-glass") return "no";
  if (depth.obstruction === "glass") return "yes";
  return !depth.obstruction || depth.obstruction === "unknown" ? "unknown" : "no";
}

function reason(depth, opening) {
  if (depth.over === "glass-down") return "measured with the glass down only: measure over the whole travel";
  if (!depth.over && (opening.in_a_door || !opening.area)) return "not recorded whether the glass was moved: measure over the whole travel";
  return "";
}

function depthCheck(room, height) {
  return capped(compare("depth", "Depth behind the flange", [room.clear].concat(height, room.gasket), room.behind, "spacer"), room.reason);
}

function grilleCheck(room, height) { return compare("grille", "Room to the grille", [room.front], height.concat(room.gasket, room.before)); }

function spacerWindow(room, seat) {
  const raised = [seat.offset].concat(room.gasket);
  const least = remaining(total(room.behind), total([room.clear].concat(raised)));
  return [Math.max(0, least), remaining(total([room.front]), total(raised.concat(room.before)))];
}

function spacerCheck(room, seat) {
  const free = depthCheck(room, [seat.offset]).margin;
  if (free === null || free >= 0) return grilleCheck(room, [seat.offset]);
  return capped(compare("spacer", "Height for a spacer", [room.front, room.clear], room.before.concat(room.behind)), room.reason);
}

function heights(pair) { return pair[0] > 0 ? both(pair[0]) + " to " + both(pair[1]) + " high" : "up to " + both(pair[1]) + " high"; }

/* on what it sits */

const BRACKET = "factory bracket";
const KEPT = "the factory bracket stays under the new speaker: see that its hole and screws take it";
const UNSEEN = "the height of the factory bracket is not recorded";
const OFF = "the factory bracket stays off";

function seat(offset, note, name) { return { offset, note: note || "", name: name || "on the mounting face" }; }

function unseen(opening) {
  return !opening.factory_spacer || opening.factory_spacer === "unknown" ? UNSEEN + ": measure it, or write 'none'" : "";
}

/** @param {SpeakerPlace} opening */
function seatsOf(opening) {
  const datum = opening.depth ? opening.depth.datum : "", height = opening.factory_spacer;
  if (datum === "skin") {
    if (isLength(height)) return [seat(known(BRACKET + ", left off", 0), OFF), seat(typed(BRACKET + ", kept", height), KEPT, "on the factory bracket")];
    return [seat(known("mounting face", 0), height === "none" ? "" : UNSEEN + ": it is reckoned as left off")];
  }
  if (datum === "bracket") {
    if (isLength(height)) {
      return [seat(number(BRACKET + ", taken away", -height.value, height.step, "−" + height.shown), OFF),
        seat(known(BRACKET + ", kept", 0), KEPT, "on the factory bracket")];
    }
    return [seat(known("mounting face", 0), height === "none" ? "" : UNSEEN + ": " + KEPT)];
  }
  return [seat(number("mounting face against the face that the depth is measured from", null, 0, datum ? "measured from the " + datum : "not recorded"))];
}

/* verdicts */

function smallest(checks) {
  const room = checks.filter((one) => one.margin !== null && one.unit === "mm" && one.name.indexOf("bolts") < 0)
    .map((one) => one.margin);
  return room.length ? Math.min(...room) : -Infinity;
}

function listed(names) { return names.length > 1 ? names.slice(0, -1).join(", ") + " and " + names[names.length - 1] : names.join(""); }

function less(one, other) {
  for (let i = 0; i < one.length; i += 1) if (one[i] !== other[i]) return one[i] < other[i];
  return false;
}

function decide(checks, parts, toGet, notes) {
  const verdicts = checks.map((one) => one.verdict);
  const has = (verdict) => verdicts.indexOf(verdict) >= 0;
  const kind = has("fails") ? "does-not-fit" : has("unknown") ? "unknown" : has("marginal") ? "marginal" : parts.length + toGet.length ? "fits-with" : "fits";
  const order = (one) => [WORST.indexOf(one.verdict), one.mend ? 1 : 0, one.margin === null ? Infinity : one.margin];
  const ordered = checks.slice().sort((a, b) => less(order(a), order(b)) ? -1 : less(order(b), order(a)) ? 1 : 0);
  const fit = { kind, headline: "", parts, to_get: toGet, notes, checks: ordered, plate: false };
  const between = betweenWords(fit), holds = kind === "fits" || kind === "fits-with", why = reasons(fit).join("; ");
  fit.reason = holds ? between : (between ? "with " + between + ": " : "") + why;
  fit.headline = (holds ? "fits" : kind.replace(/-/g, " ")) + (between ? " with " + between : "") + (holds ? "" : ": " + why);
  return fit;
}

export const STOP = "STOP: not a plain replacement";

/* The answer for gear that goes in while something is lost with the factory unit that is not the owner's to give up. The joint is not known here. */
export function stopped(fit, why) {
  if (!why.length || fit.kind === "does-not-fit") return fit;
  const reason = why.join("; ") + ". By size: " + fit.headline;
  return { ...fit, kind: "stop", reason, headline: STOP + ": " + reason};
}

/* What goes between, in words; empty where nothing does. */
function betweenWords(fit) {
  if (!fit.to_get.length) return fit.parts.length ? listed(fit.parts) : "";
  if (!fit.parts.length) return listed(fit.to_get) + ": none in stock suits";
  return listed(fit.parts) + ", and with " + listed(fit.to_get) + ": none of that in stock suits";
}

function reasons(fit) {
  const said = fit.checks.filter((one) => one.verdict === fit.checks[0].verdict);
  return (fit.kind === "does-not-fit" ? said.slice(0, 1) : said).map((one) => one.words);
}

function best(fits) {
  const order = (fit) => {
    const kind = KINDS.indexOf(fit.kind), lacking = fit.to_get.length ? 1 : 0;
    if (fit.kind === "does-not-fit") return [kind, 0, 0, 0];
    return [Math.max(kind, lacking ? KINDS.indexOf("marginal") : 0), lacking, fit.parts.length, -smallest(fit.checks)];
  };
  return fits.reduce((found, fit) => less(order(fit), order(found)) ? fit : found);
}

/* a speaker */

/**
 * @param {SpeakerSizes} gear
 * @param {SpeakerPlace} opening
 * @param {Array<{ name: string, gear: SpacerSizes }>} spacers
 * @param {Usual} usual
 */
export function speaker(gear, opening, spacers, usual) {
  const one = { gear, opening, usual, room: roomFor(gear, opening, usual), turned: false };
  let found = best(ways(one, spacers));
  if (turnable(gear)) {
    const turned = best(ways({ ...one, turned: true}, spacers));
    const rank = (fit) => [KINDS.indexOf(fit.kind), fit.to_get.length ? 1 : 0];
    if (less(rank(turned), rank(found))) found = turned;
  }
  return { ...found, notes: found.notes.concat(otherWays(one, found), level(opening.impedance, gear.impedance, usual.bounds.heard), holes(opening, found), behind(opening.depth))};
}

function car(one) { return { what: "the car", hole: one.opening.hole, bolts: one.opening.bolts, panel: one.opening.panel, flat: true }; }

function seatedOn(one, hold) { return seated(one.gear, hold, one.usual, one.turned); }

function decided(one, checks, where, stock, toGet) {
  const said = [where.note, one.turned ? "turned by 90 degrees" : ""].filter(Boolean);
  return decide(checks, stock ? [stock] : [], toGet ? [toGet] : [], said);
}

function ways(one, spacers) {
  return seatsOf(one.opening).map((where) => [plain(one, where)].concat(toGet(one, where), spacers.map((spacer) => onSpacer(one, where, spacer)))).flat();
}

function plain(one, where) {
  return decided(one, seatedOn(one, car(one)).concat([depthCheck(one.room, [where.offset]), grilleCheck(one.room, [where.offset])]), where);
}

function onSpacer(one, where, spacer) {
  const part = spacer.gear, height = [where.offset, typed("thickness of " + spacer.name, part.thickness)];
  const checks = [].concat(
    through(one.gear, car(one), one.turned),
    seatedOn(one, { what: spacer.name, hole: part.hole, bolts: part.bolts }),
    spacerHeld(one, spacer),
    [depthCheck(one.room, height), grilleCheck(one.room, height)]);
  return decided(one, checks, where, spacer.name);
}

function spacerHeld(one, spacer) {
  const rim = outline("rim of " + spacer.name, spacer.gear.flange), hold = car(one);
  return [].concat(
    covered(rim, hold, one.usual, false),
    lying("Rim of " + spacer.name, rim, hold, false),
    matchBolts("spacer-bolts", spacer.gear.car_bolts || spacer.gear.bolts, one.opening.bolts, one.usual.bolts, "the car",
      { turned: false, free: allRound([spacer.gear.flange, spacer.gear.hole]) }));
}

function toGet(one, where) {
  const depth = depthCheck(one.room, [where.offset]), on = seatedOn(one, car(one)).concat([depth]);
  const failing = on.filter((check) => check.verdict === "fails");
  if (!failing.length || !failing.every((check) => check.mend)) return [];
  const plate = failing.some((check) => check.mend === "adapter"), what = plate ? "an adapter plate" : "a spacer";
  const raised = spacerCheck(one.room, where);
  const sure = depth.margin !== null && raised.margin !== null && raised.margin >= 0;
  const kept = on.filter((check) => failing.indexOf(check) < 0);
  const found = decided(one, kept.concat([raised]), where, "", sure ? what + " " + heights(spacerWindow(one.room, where)) : what);
  return [Object.assign(found, { plate })];
}

function otherWays(one, found) {
  const said = seatsOf(one.opening).map((where) => [where, plain(one, where)])
    .filter((pair) => JSON.stringify(pair[1].checks) !== JSON.stringify(found.checks))
    .map((pair) => pair[0].name + ": " + pair[1].headline);
  return said.concat(noWindow(one, found));
}

function noWindow(one, found) {
  const deep = found.checks.some((check) => check.mend === "spacer" && check.verdict === "fails");
  if (found.kind !== "does-not-fit" || !deep) return [];
  const where = seatsOf(one.opening)[0];
  if (spacerCheck(one.room, where).verdict !== "fails") return [];
  const pair = spacerWindow(one.room, where);
  const room = pair[1] > 0 ? "leaves " + both(pair[1]) : "leaves no room at all";
  return ["no spacer helps: it would have to be " + both(pair[0]) + " high at least, and the grille " + room];
}

function level(old, fresh, heard) {
  if (!isLength(fresh) || !fresh.value) return [];
  if (!isLength(old) || !old.value) return ["the level against the factory speaker cannot be told: its impedance is not recorded"];
  const change = round(10 * Math.log10(old.value / fresh.value), 1);
  if (!change) return [];
  return [fresh.shown + " in place of " + old.shown + ": " + (change > 0 ? "+" : "−") + Math.abs(change).toFixed(1) + " dB at equal voltage" +
    (Math.abs(change) > heard ? ", more than the " + heard + " dB that are plainly heard" : "")];
}

function holes(opening, fit) {
  const mismatch = fit.checks.some((check) => check.name.indexOf("bolts") === 0 && check.verdict !== "fits");
  const sensor = opening.crash_sensor;
  if (!(mismatch || fit.plate) || sensor === "no") return [];
  return ["no cutting and no drilling in this door: " + (sensor === "yes" ? "there is a crash pressure sensor" : "a crash pressure sensor is not ruled out")];
}

/* That a greater clearance was kept because nobody recorded what is behind. */
function behind(depth) {
  return depth && isLength(depth.clear) && toGlass(depth) === "unknown" ? ["what is behind is not recorded: reckoned as the window glass"] : [];
}

/* The load of its channel against what drives it, as `load.py` has it; `joined` is what is on the channel, the speaker itself first. */

/**
 * @param {{ impedance: Given }} gear
 * @param {Load} joined
 */
export function load(gear, joined) {
  const title = "Load on " + joined.what, parts = joined.parts.slice();
  parts[0] = changed(parts[0], { impedance: gear.impedance });
  const sets = joinedSets(parts), missing = [];
  sets.forEach((set) => {
    set.forEach((part) => {
      const said = typed("impedance of " + part.name, part.impedance);
      if (said.value === null && missing.indexOf(named(said)) < 0) missing.push(named(said));
    });
  });
  if (missing.length) return untold("load", title, missing);
  const limit = loadLimit(joined, sets), found = sets.map((set) => heldLoad(title, set, limit));
  let lowest = found.reduce((least, one) => one.have < least.have ? one : least);
  if (limit.value === null || (limit.lacking && lowest.verdict === "fails")) return untold("load", title, [named(typed("least load of " + joined.what, joined.least))], lowest.numbers);
  const verdicts = found.map((one) => one.verdict);
  if (verdicts.indexOf("fits") >= 0 && verdicts.indexOf("fails") >= 0) {
    const unfed = parts.filter((part) => part.fed_through === "unknown").map((part) => part.name);
    return untold("load", title, ["how " + unfed.join(" and ") + " is fed (unknown)"], lowest.numbers);
  }
  lowest = capped(lowest, limit.lacking ? "look the least load up" : "");
  return capped(lowest, joined.unplaced.length ? "find out the channel of " + joined.unplaced.join(", ") : "");
}

function counted(part) {
  if (part.fed_through === "unknown") return [false, true];
  return [part.fed_through === "" || part.fed_through === "direct"];
}

function joinedSets(parts) {
  const first = parts[0], others = parts.slice(1);
  const sure = [first].concat(others.filter((part) => counted(part).indexOf(false) < 0));
  const most = [first].concat(others.filter((part) => counted(part).indexOf(true) >= 0));
  const together = sure.length === most.length ? [sure] : [sure, most];
  const own = counted(first);
  return (own.indexOf(false) >= 0 ? [[first]] : []).concat(own.indexOf(true) >= 0 ? together : []);
}

function loadLimit(joined, sets) {
  const label = "least load of " + joined.what;
  if (isLength(joined.least)) return number(label, joined.least.value, 0, joined.least.shown);
  const said = typed(label, joined.least);
  if (!sets.every((set) => set.every((part) => isLength(part.factory)))) return said;
  const made = Math.min(...sets.map((set) => parallel(set.map((part) => part.factory.value))));
  return changed(said, { value: made, text: said.text + ", the factory speakers make " + ohms(made), lacking: true });
}

function heldLoad(title, set, limit) {
  const together = parallel(set.map((part) => part.impedance.value)), least = limit.value || 0;
  const margin = round(together - least, DIGITS), allowed = limit.lacking ? "least load " + limit.text : ohms(least) + " at least";
  const numbers = set.map((part) => number("impedance", part.impedance.value, 0, part.impedance.shown)).concat([limit]);
  return made("load", title, margin >= 0 ? "fits" : "fails", title + ": " + ohms(together) + ", " + allowed,
    { need: least, have: together, margin, uncertainty: 0, numbers, unit: "ohm" });
}

function parallel(loads) {
  return loads.every(Boolean) ? 1 / loads.reduce((all, one) => all + 1 / one, 0) : 0;
}

function ohms(value) { return round(value, 2) + " Ω"; }

/* An answer with more checks. */
export function together(fit, checks) { return Object.assign(decide(fit.checks.concat(checks), fit.parts, fit.to_get, fit.notes), { plate: fit.plate }); }

/* a receiver */

/**
 * @param {ReceiverSizes} gear
 * @param {ReceiverPlace} opening
 * @param {Array<{ name: string, gear: KitSizes }>} kits
 * @param {Usual} usual
 */
export function receiver(gear, opening, kits, usual) {
  const one = { gear, opening, usual };
  return best(straight(one, kits).concat(kits.map((kit) => throughKit(one, kit))));
}

function receiverChecks(one, face, what) {
  return [].concat(contain("body", "Body in the " + what, rectangle("body", one.gear.body), rectangle(what, face)), frontChecks(one), [receiverDepth(one)]);
}

function frontChecks(one) {
  if (!one.gear.trim) return [untold("front", "Trim before the dash", ["trim or screen before the dash (not recorded)"])];
  return contain("front", "Trim before the dash", rectangle("trim", one.gear.trim), clearFront(one.opening, one.gear.trim));
}

/* The room before the dash; where it is not recorded, the opening itself for what is no larger. */
function clearFront(opening, trim) {
  if (opening.clear_front) return rectangle("clear front", opening.clear_front);
  const front = rectangle("trim", trim), face = rectangle("opening", opening.face);
  return { shape: "rectangle", width: within(front.width, face.width, "clear room in front, width"), height: within(front.height, face.height, "clear room in front, height") };
}

function within(need, have, what) { return need.value === null || have.value === null || need.value > have.value ? typed(what, null) : have; }

function receiverDepth(one) {
  const depth = one.opening.depth, room = isLength(one.gear.plug_room) ? typed("plug room", one.gear.plug_room) : one.usual.plug_room;
  const clear = depth && depth.datum !== "face"
    ? number("depth from the front of the dash", null, 0, depth.datum ? "measured from the " + depth.datum : "from which face it was measured is not recorded")
    : typed("clear depth", depth ? depth.clear : null);
  return compare("depth", "Depth behind the chassis", [clear], [typed("chassis depth", one.gear.chassis_depth), room]);
}

function decidedIn(one, checks, face, stock, toGetName, more) {
  return decide(checks, stock ? [stock] : [], toGetName ? [toGetName] : [], receiverNotes(one, face).concat(more || []));
}

function straight(one, kits) {
  const face = one.opening.face, checks = receiverChecks(one, face, "opening");
  if (one.opening.kit === "not-needed") return [decidedIn(one, checks, face)];
  if (one.opening.kit === "needed") return kits.length ? [] : [decidedIn(one, checks, face, "", "a kit")];
  return [decidedIn(one, checks.concat([untold("kit", "Dash kit", ["whether a kit is needed (unknown)"])]), face)];
}

function throughKit(one, kit) {
  const inside = kit.gear.contains.length ? ["in the box of " + kit.name + ": " + kit.gear.contains.join(", ")] : [];
  const checks = receiverChecks(one, kit.gear.opening, "opening of " + kit.name).concat(kitHeld(one, kit));
  return decidedIn(one, checks, kit.gear.opening, kit.name, "", inside);
}

function kitHeld(one, kit) {
  return contain("kit", "Opening of " + kit.name + " within the opening of the car", rectangle("opening of " + kit.name, kit.gear.opening), rectangle("opening", one.opening.face))
    .filter((check) => check.verdict === "fails" || check.verdict === "unknown");
}

function receiverNotes(one, face) {
  const body = rectangle("body", one.gear.body), opening = rectangle("opening", face);
  let said = [];
  if (!isLength(one.gear.plug_room)) said.push("the room that its plugs need is not recorded: reckoned with the usual " + one.usual.plug_room.text);
  const wide = compare("", "", [opening.width], [body.width]).margin, high = compare("", "", [opening.height], [body.height]).margin;
  if (wide === null || high === null || Math.min(wide, high) < 0) return said;
  said = said.concat(trimmed(one, opening));
  if (Math.min(wide, high) < (one.usual.sleeve.value || 0)) said.push("no room for a sleeve: " + both(Math.min(wide, high)) + " left over, " + one.usual.sleeve.text + " wanted");
  if (high >= (one.usual.filler.value || 0)) said.push(both(high) + " of height left over: a filler or a pocket closes it");
  return said;
}

function trimmed(one, opening) {
  if (!one.gear.trim) return [];
  const trim = rectangle("trim", one.gear.trim);
  const over = [["at the sides", opening.width, trim.width], ["above and below", opening.height, trim.height]]
    .map((row) => [row[0], compare("", "", [row[1]], [row[2]]).margin || 0]);
  const said = over.filter((row) => row[1] > 0 && row[1] < (one.usual.filler.value || 0))
    .map((row) => "the trim leaves " + both(row[1]) + " open " + row[0]);
  if (!one.opening.clear_front && over.some((row) => row[1] < 0)) {
    said.push("the trim is " + both(trim.width.value || 0) + " × " + both(trim.height.value || 0) +
      ": measure the room before the vents and switches of the car");
  }
  return said;
}

/* A usual clearance with another length in its place. */
/**
 * @param {FitNumber} one
 * @param {Quantity} length
 */
export function replaced(one, length) { return number(one.label, length.value, 0, length.shown, true); }
