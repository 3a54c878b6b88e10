/* Which of two vehicles it is: the question that tells them apart at the car, and what each answers. */

import { list, say } from "./words.js";

/** @import { FinderRow } from "published" */

/** @param {FinderRow} row */
export function bodies(row) { return row[9].map((body) => say("vehicle-page/body-shape", { body: say(`body/${body}`) })); }

/** @param {FinderRow} row */
function called(row) { return [row[1], row[2]].join(" "); }

/**
 * @param {FinderRow} one
 * @param {FinderRow} other
 * @returns {{ ask: string, answers: Map<FinderRow, string> }}
 */
export function telling(one, other) {
  const [first, later] = one[7] <= other[7] ? [one, other] : [other, one];
  if (called(one) === called(other) && first[8] && first[8] <= later[7]) {
    return { ask: say("finder/ask-built", { month: later[7] }), answers: new Map([[first, say("finder/answer-before", { month: first[8] })], [later, say("finder/answer-from", { month: later[7] })]]) };
  }
  const shapes = [one, other].map((row) => list(bodies(row), "or"));
  if (shapes[0] !== shapes[1] && shapes[0] && shapes[1]) return { ask: say("body/ask"), answers: new Map([[one, shapes[0]], [other, shapes[1]]]) };
  return { ask: say("finder/ask-which"), answers: new Map() };
}
