// What scripts with data call, once the script of their page has run.
import type * as FitPlace from "../site_overrides/assets/undertrim/fit-place.js";
import type * as FitTime from "../site_overrides/assets/undertrim/fit-time.js";
import type * as FitVerdict from "../site_overrides/assets/undertrim/fit-verdict.js";
import type { Claimable, Finder, FinderMore, MeterTable, Places, PlaceVehicle } from "published";

/** Shapes, table and the whole (publish/packing.py). */
type Packed = [string[][], unknown[], unknown];

declare global {
  interface Window {
    undertrimTried(asked: { gear: string; name: string; kind: string; vehicle: string; opening: string; place: string; car: Record<string, string> }): void;
    undertrimClaim(asked: { facts: Claimable; about: string; car: Record<string, string> }): void;
    undertrimFacts(packed: Packed): void;
    undertrimFinder(name: string, data: Finder & FinderMore): void;
    undertrimFit: {
      fittings: typeof FitTime.fittings;
      open: typeof FitPlace.open;
      ranked: typeof FitPlace.ranked;
      use: typeof FitPlace.use;
      verdict: typeof FitPlace.verdict;
      verdictWords: typeof FitVerdict.verdictWords;
    };
    undertrimMeter: { start(table: MeterTable): void };
    undertrimGlossary(entries: [string[], string][]): void;
    undertrimPlaces(name: string, data: Places | PlaceVehicle[]): void;
    undertrimShelf(name: string, packed: Packed): void;
  }
}
