// What scripts with data call, once the script of their page has run.
import type { Finder, MeterTable, Shelf } from "published";

declare global {
  interface Window {
    undertrimFinder(name: string, data: Finder): void;
    undertrimFitForm: { start(shelf: Shelf): void };
    undertrimMeter: { start(table: MeterTable): void };
  }
}
