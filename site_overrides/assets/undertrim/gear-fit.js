/* What gear of the shelf comes to at an opening, for a page that asks for it only when somebody chooses gear. */

import { open, ranked, reckons, verdict } from "./fit-place.js";
import { verdictWords } from "./fit-verdict.js";
import { use } from "./lengths.js";

window.undertrimFit = { open, ranked, reckons, use, verdict, verdictWords };
