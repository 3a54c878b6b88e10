/* What the scripts of all of a vehicle's pages have in common: each of them takes it from here (TAKES of publish/web/scripts.py). */

import "./chosen.js";
import "./elements.js";
import "./packed.js";
import "./shelf.js";
import "./visit-text.js";
import "./visits.js";
import "./words.js";
