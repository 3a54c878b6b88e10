/* The page of the record behind a vehicle: it shows all of it, and keeps the visit for the way back. */

import { keepChoices } from "./keep-choices.js";
import { begin } from "./visit-shown.js";

begin();
keepChoices();
