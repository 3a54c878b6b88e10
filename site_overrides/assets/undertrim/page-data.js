/* What the page of a visit was sent, made whole: a step or line is sent without what is none or 0, which was half of it. */

/** @import { Page, PageCount, PageLine, PageStep } from "published" */
/** @typedef {Required<PageCount>} Count fasteners of one sort, by what becomes of them */
/** @typedef {Required<Omit<PageLine, "counts">> & { counts: Count[] }} Line */
/** @typedef {Required<Omit<PageStep, "minutes" | "wait" | "lines">> & { minutes: number | null, wait: { seconds: number | null } | null, lines: Line[] }} Step */

/** @param {PageLine} line @returns {Line} */
function wholeLine(line) {
  const counts = (line.counts || []).map((count) => ({ out: 0, back: 0, moved: 0, bagged: 0, binned: 0, new: 0, unrecorded: 0, ...count }));
  return { tool: "", either: [], buy: [], clauses: {}, ...line, counts };
}

/** @param {PageStep} step @returns {Step} */
function wholeStep(step) {
  const wait = step.wait === undefined ? null : { seconds: step.wait };
  return { minutes: null, untimed: 0, tools: [], materials: [], turns: [], at: [], ...step, wait, lines: (step.lines || []).map(wholeLine) };
}

/** @param {Page} page */
export function whole(page) { return { ...page, steps: page.steps.map(wholeStep) }; }
