/* The first page: the visits under way on this device. */

import { byId } from "./elements.js";
import { showVisits } from "./visits-list.js";

showVisits(byId("ut-visits"), () => true);
