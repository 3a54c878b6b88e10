/* Where the site is served, each page has the keeper keep it for times without a signal, and says aloud what is no page of today. */

import { ask, BASE, SERVED, TOP } from "./keeper-asked.js";
import { make } from "./elements.js";
import { placeWanted } from "./reading.js";
import { say, tag } from "./words.js";

/* Says aloud what this page is where it is no page of today. */
async function tell() {
  const about = await ask("about");
  if (!about) return;
  const when = new Date(about.since).toLocaleString(tag(), { dateStyle: "medium", timeStyle: "short" });
  const take = () => ask("unpin", { vehicle: vehicle() }).then(() => { location.reload(); });
  const newer = [say("page/newer-there", { when }), " ", make("button", { type: "button", class: "ut-button", click: take }, say("page/take-newer"))];
  const said = about.network === "newer" ? newer : about.network === "nothing" ? [say("page/copy-of", { when })] : [];
  if (said.length) document.querySelector("article").prepend(make("p", { class: "ut ut-copy", role: "status" }, ...said));
}

/* On the page in the place of one that is not kept: the way to that. The address says it, so it may lead nowhere else. */
function again() {
  const way = /** @type {HTMLAnchorElement | null} */ (document.getElementById("ut-again"));
  if (!way) return;
  const wanted = new URL(new URLSearchParams(location.search).get("page") || "index.html", TOP).href;
  way.href = wanted.startsWith(TOP) ? wanted : TOP;
  way.hidden = false;
}

function vehicle() { return location.href.slice(BASE.length).replace(/^vehicles\//, "").replace(/[.?#].*$/, ""); }

again();
if (SERVED) {
  navigator.serviceWorker.register(TOP + "keeper.js").then(tell).catch(() => { /* then the network is all there is */ });
  window.addEventListener("load", () => { ask("fill", { place: placeWanted() }); });
}
