/* What the frame of a page does, in place of the theme's own script, which is ten times this and does much that no page here has: its wide tables
   scroll by themselves, and what stands in code can be copied. scheme.js switches between light and dark. */

import { all, make } from "./elements.js";
import { say } from "./words.js";

all(".md-typeset table:not([class])").forEach((table) => {
  const inner = make("div", { "class": "md-typeset__table" }), outer = make("div", { "class": "md-typeset__scrollwrap" }, inner);
  table.replaceWith(outer);
  inner.append(table);
});

if (navigator.clipboard) {
  all("article pre > code").forEach((code) => {
    const button = make("button", { type: "button", "class": "ut-button ut-copy-code", click: () => {
      navigator.clipboard.writeText(code.textContent).then(() => { button.textContent = say("page/copied"); }, () => { button.remove(); });
    } }, say("page/copy"));
    code.parentElement.after(button);
  });
}
