/* The page of the record behind a vehicle: it shows all of it, and keeps the visit for the way back. */

import { showClaims } from "./claims-list.js";
import { byId } from "./elements.js";
import { keepChoices } from "./keep-choices.js";
import "./not-so.js";
import { begin } from "./visit-shown.js";

begin();
keepChoices();
showClaims(byId("ut-claims"));
