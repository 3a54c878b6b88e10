/* The first page: the visits under way on this device. */

import { byId } from "./elements.js";
import { showVisits } from "./visits-list.js";

const base = /** @type {HTMLScriptElement} */ (document.currentScript).src.replace(/assets\/undertrim\/[^/]*$/, "");
showVisits(byId("ut-visits"), base, () => true);
