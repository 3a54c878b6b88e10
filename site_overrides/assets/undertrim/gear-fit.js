/* What gear of the shelf comes to at an opening, for a page that asks for it only when somebody chooses gear. */

import { open, ranked, use, verdict } from "./fit-place.js";
import { fittings } from "./fit-time.js";
import { verdictWords } from "./fit-verdict.js";

window.undertrimFit = { fittings, open, ranked, use, verdict, verdictWords };
