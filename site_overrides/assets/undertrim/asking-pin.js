/* A contact, told by touching it on the face of its plug. The faces stand in the page as templates, as its tables of pins draw them. */

import { all, byId, make } from "./elements.js";
import { say } from "./words.js";

/** @param {string[]} plugs ids @param {string} said plug/contact */
export function inputOfPin(plugs, said) {
  let chosen = said;
  const status = make("p", { role: "status" }), faces = make("div", { class: "ut-faces", click: touch });
  plugs.forEach((plug) => {
    const drawn = /** @type {HTMLTemplateElement | null} */ (byId(`ut-plug-${plug}`));
    if (drawn) faces.append(drawn.content.cloneNode(true));
  });
  all("[data-least]", faces).forEach((box) => { box.style.minWidth = box.dataset.least; });
  const contacts = all("a", faces);
  const typed = /** @type {HTMLInputElement} */ (make("input", { type: "text", autocomplete: "off", "aria-label": say("asked/no-face"), change: () => { chosen = typed.value.trim(); show(); } }));

  function of(contact) {
    const plug = contact.closest("[data-plug]").getAttribute("data-plug");
    return `${plug}/${contact.getAttribute("href").slice(`#pin-${plug}-`.length)}`;
  }
  function touch(event) {
    const contact = event.target.closest("a");
    if (!contact) return;
    event.preventDefault();
    chosen = of(contact);
    show();
  }
  function show() {
    contacts.forEach((contact) => {
      if (of(contact) === chosen) contact.setAttribute("aria-current", "true");
      else contact.removeAttribute("aria-current");
    });
    const [plug, pin] = chosen.split("/");
    status.textContent = pin ? say("asked/pin-said", { plug, pin }) : "";
  }

  const node = make("div", { class: "ut-asked-pin" }, ...contacts.length ? [make("p", {}, say("asked/touch-pin")), faces] : [make("p", {}, say("asked/no-face")), typed], status);
  typed.value = chosen;
  show();
  return { node, says: () => chosen, wrong: () => "", clear() { chosen = typed.value = ""; show(); } };
}
