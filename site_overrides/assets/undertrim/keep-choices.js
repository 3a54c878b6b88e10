/* What a device keeps besides all pages: sheets and pictures of a car, of a make, or of every vehicle. */

import { known, page } from "./chosen.js";
import { byId, make, target } from "./elements.js";
import { ask, SERVED } from "./keeper-asked.js";
import { say } from "./words.js";

function standingWords(standing) {
  if (!standing) return say("page/keep-later");
  return standing.kept === standing.of ? say("page/keep-all-here", { count: standing.of }) : say("page/keep-some-here", { kept: standing.kept, count: standing.of });
}

export function keepChoices() {
  if (!SERVED) return;
  const status = make("p", { role: "status" }), makes = known.address.split("/")[0];
  const maker = page.querySelector(".ut-path a:last-child").textContent;
  const choices = [["car:" + known.address, say("page/keep-car")], ["make:" + makes, say("page/keep-make", { make: maker })], ["all", say("page/keep-every")]];
  const boxes = choices.map(([what]) => /** @type {HTMLInputElement} */ (make("input", { type: "checkbox", change: async (event) => {
    status.textContent = say("page/keep-working");
    status.textContent = standingWords(await ask("choose", { what, on: target(event).checked }));
  } })));
  byId("ut-keeping").append(make("details", { class: "ut-keep" }, make("summary", {}, say("page/keep")), make("p", {}, say("page/keep-why")),
    ...choices.map(([, words], index) => make("label", { class: "ut-pick" }, boxes[index], words)), status));
  ask("choices").then((chosen) => { boxes.forEach((box, index) => { box.checked = Boolean(chosen && chosen[choices[index][0]]); }); });
}
