/* The page of the openings: what concerns the visit, and the forms for other gear. */

import "./fit-form.js";
import "./not-so.js";
import "./stock-list.js";
import { begin } from "./visit-shown.js";

begin();
