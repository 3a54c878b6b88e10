/* What the frame of a page does, in place of the theme's own script, which is ten times this and does much that no page here has: it is switched
   between light and dark, its wide tables scroll by themselves, and what stands in code can be copied. */

import { all, make } from "./elements.js";
import { say } from "./words.js";

/** The theme's places for what a reader chose. @type {any} */
const theme = window;
const inputs = all("form[data-md-component='palette'] input");

/* Shows the colours of one of the switches, and the label that leads to the next. */
function show(chosen) {
  const { mdColorMedia: media, mdColorScheme: scheme, mdColorPrimary: primary, mdColorAccent: accent } = chosen.dataset;
  const colours = { media, scheme, primary, accent };
  Object.entries(colours).forEach(([name, value]) => { document.body.setAttribute("data-md-color-" + name, value); });
  inputs.forEach((one) => { /** @type {HTMLElement} */ (one.nextElementSibling).hidden = one !== chosen; });
  return colours;
}

function begin() {
  const kept = theme.__md_get("__palette"), own = kept && inputs[kept.index], { classList } = document.documentElement;
  classList.add("ut-still"); // what is dark from the beginning does not fade into it
  requestAnimationFrame(() => { requestAnimationFrame(() => { classList.remove("ut-still"); }); });
  show(own || inputs.find((one) => matchMedia(one.dataset.mdColorMedia).matches) || inputs[0]);
  inputs.forEach((one, index) => {
    one.addEventListener("change", () => {
      const color = show(one);
      theme.__md_set("__palette", { index, color });
      /** @type {HTMLElement} */ (one.nextElementSibling).focus();
    });
    matchMedia(one.dataset.mdColorMedia).addEventListener("change", (event) => { if (event.matches && !theme.__md_get("__palette")) show(one); });
  });
}

if (inputs.length) begin();

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
