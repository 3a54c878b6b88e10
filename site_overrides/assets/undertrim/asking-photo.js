/* A photograph from the camera beside an answer: what is to be seen in it is said too, for whoever does not see it. */

import { line } from "./asking-inputs.js";
import { make } from "./elements.js";
import { keepPhoto, nameFor, photo as kept, small } from "./photos-kept.js";
import { say } from "./words.js";

/** @import { AskedField } from "published" */
/** @import { Claim } from "./claims.js" */

/** Its picture as a canvas: the policy of the pages lets an image have no address of its own making. @param {Blob} picture */
async function shown(picture) {
  const drawn = await createImageBitmap(picture);
  const canvas = /** @type {HTMLCanvasElement} */ (make("canvas", { class: "ut-asked-photo", "aria-hidden": "true" }));
  canvas.width = drawn.width;
  canvas.height = drawn.height;
  canvas.getContext("2d").drawImage(drawn, 0, 0);
  return canvas;
}

/** @param {AskedField} field @param {Claim | undefined} before */
export function photoInput(field, before) {
  let file = before && before.photo ? before.photo.file : "";
  const words = line(say("asked/photo-shows"), before && before.photo ? before.photo.shows : field.title, { maxlength: "200" }, () => "");
  const status = make("p", { role: "status" }), place = make("div", {});
  const camera = make("input", { type: "file", accept: "image/*", capture: "environment", change: take, "aria-label": say("asked/photo") });
  const there = make("div", {}, place, make("label", { class: "ut-name" }, say("asked/photo-shows"), words.node), make("p", {}, make("small", {}, say("asked/photo-here"))),
    make("button", { type: "button", class: "ut-button", click: drop }, say("asked/photo-drop")));
  const node = make("div", {}, make("label", { class: "ut-asked-camera" }, say("asked/photo"), camera), status, there);

  async function show() {
    there.hidden = !file;
    const picture = file && await kept(file).catch(() => undefined);
    place.replaceChildren(...picture ? [await shown(picture)] : []);
  }
  function drop() {
    file = "";
    show();
  }
  async function take(event) {
    const [chosen] = event.target.files;
    if (!chosen) return;
    status.textContent = say("page/keep-working");
    let picture;
    try { picture = await small(chosen); } catch (error) {
      status.textContent = say("asked/photo-not");
      return;
    }
    const name = file || nameFor(field.about);
    try { await keepPhoto(name, picture); } catch (error) {
      status.textContent = say("asked/photo-no-room");
      return;
    }
    file = name;
    status.textContent = "";
    await show();
  }
  show();
  return { node, says: () => file ? { file, shows: words.says() || field.title } : null };
}
