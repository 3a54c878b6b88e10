/* The tray as the screen of a step shows it: what lies there, what broke, and whether all of it goes back in. */

import { all, make } from "./elements.js";
import { keep, kept } from "./visit-kept.js";
import { keyOf, passedOver, tray } from "./visit-tray.js";
import { list, number as spoken, say } from "./words.js";

/** @import { Step } from "./page-data.js" */

function of(sort, count) { return say("bay/of-a-sort", { count, sort }); }

/** What lies in the tray, in a line. */
export function trayWords(steps, done, at, car) {
  const rows = tray(steps, done, at, car);
  const inside = rows.filter((row) => row.now > 0).map((row) => of(row.sort, row.now)), bag = rows.filter((row) => row.bagged > 0).map((row) => of(row.sort, row.bagged));
  return [inside.length ? say("bay/in-tray", { things: list(inside, "comma") }) : say("bay/tray-empty"), ...bag.length ? [say("bay/in-bag", { things: list(bag, "comma") })] : []].join(" ");
}

/**
 * Beside the fasteners of a step, what one presses where one broke or was lost. It is bought, and the tray counts the new one in its place.
 * @param {HTMLElement} area
 * @param {Step} step
 */
export function spoiltBeside(area, step, car, again) {
  const sorts = tray([step], () => false, 0, car).map((row) => row.sort);
  const lines = sorts.map((sort) => {
    const key = keyOf(step, sort), count = (kept().spoilt[step.id] || {})[key] || 0;
    const change = (value) => {
      keep((one) => {
        const mine = { ...one.spoilt[step.id], [key]: value };
        if (Object.values(mine).some(Boolean)) one.spoilt[step.id] = mine;
        else delete one.spoilt[step.id];
      });
      again();
    };
    return make("li", {}, make("span", {}, sort, ...count ? [" ", make("b", {}, say("bay/spoilt", { count }))] : []), counter(sort, count, change));
  });
  if (lines.length) area.append(make("details", { class: "ut-broke" }, make("summary", {}, say("bay/something-broke")), make("ul", {}, ...lines)));
  if (kept().spoilt[step.id]) /** @type {HTMLDetailsElement} */ (all(".ut-broke", area)[0]).open = true;
}

/**
 * A look into the tray before it is too late: what should lie there, whether the steps to come take all of it, and which steps were passed over.
 * Who counts something else is told what that means.
 * @param {Step[]} steps
 * @param {(place: number) => void} go
 */
export function lookInto(steps, done, at, car, go) {
  const rows = tray(steps, done, at, car).filter((row) => row.now || row.over), over = passedOver(steps, done, at, car);
  const passed = over.map((place) => make("li", {}, make("button", { type: "button", class: "ut-button", click: () => { go(place); } }, say("bay/passed-over", { step: spoken(place + 1) }))));
  return make("section", { class: "ut-look" }, make("h3", {}, say("bay/look")),
    make("p", {}, rows.length ? say("bay/should-lie") : say("bay/should-be-empty")),
    make("ul", { class: "ut-look-rows" }, ...rows.map((row) => counted(row, steps, car))),
    ...passed.length ? [make("p", {}, make("b", {}, say("bay/not-ticked"))), make("ul", {}, ...passed)] : []);
}

/* A number with what makes it less and more. */
function counter(sort, value, change) {
  let now = value;
  const shown = make("output", {}, spoken(now));
  const by = (step) => () => {
    now = Math.max(0, now + step);
    shown.textContent = spoken(now);
    change(now);
  };
  return make("span", { class: "ut-count" },
    make("button", { type: "button", class: "ut-button", "aria-label": say("bay/fewer", { sort }), click: by(-1) }, "−"), shown,
    make("button", { type: "button", class: "ut-button", "aria-label": say("bay/more", { sort }), click: by(1) }, "+"));
}

/* One sort: how many there should be, how many there are, and what the difference means. */
function counted(row, steps, car) {
  const means = make("p", { class: "ut-means", role: "status" });
  const show = (there) => {
    const rest = there - row.now + Math.max(0, row.over); // fewer than the steps to come put in are explained by the steps that are not ticked
    means.textContent = rest > 0 ? say("bay/left-over", { count: rest, sort: row.sort, steps: places(row.sort, steps, car, "back") })
      : rest < 0 ? say("bay/missing", { count: -rest, sort: row.sort, steps: places(row.sort, steps, car, "out") }) : "";
    item.classList.toggle("ut-off", rest !== 0);
  };
  const item = make("li", {}, make("span", {}, row.sort), counter(row.sort, Math.max(0, row.now), show), means);
  show(row.now);
  return item;
}

/* The numbers of the steps where fasteners of a sort come out, or go back. */
function places(sort, steps, car, fate) {
  const found = steps.map((step, place) => [step, place + 1]).filter(([step]) => tray([/** @type {Step} */ (step)], () => true, 0, car)
    .some((row) => row.sort === sort && (fate === "out" ? row.now > 0 : row.now < 0))).map(([, place]) => String(place));
  return list(found, "comma");
}
