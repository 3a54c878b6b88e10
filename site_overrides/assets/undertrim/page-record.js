/* The page of the record behind a vehicle: it shows all of it, and keeps the visit for the way back. */

import { begin } from "./visit-shown.js";

begin();
