/* The page of the wiring: what concerns the visit, and the meter guides. */

import { all } from "./elements.js";
import { page } from "./chosen.js";
import "./meter-guide.js";
import "./not-so.js";
import { turnWhereNarrow } from "./plug-turned.js";
import { stockOfWiring } from "./wiring-stock.js";
import { begin } from "./visit-shown.js";

/* A plug is drawn no smaller than a finger needs; set here, since the policy of the site allows no style in the page itself. */
all("[data-least]", page).forEach((box) => {
  box.style.minWidth = box.dataset.least;
  box.style.maxWidth = box.dataset.most;
});
begin();
turnWhereNarrow(page);
stockOfWiring();
