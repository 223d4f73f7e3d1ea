import type { EntryOf } from "../ledger/entry.ts";
import type { FlagEntry } from "./flags.ts";

/** What a lot was closed with, its entry and when. */
export type Closing = EntryOf<"lot-closed">["body"] & { entry: string; at: string };

/** A lot as the ledger tells it. */
export type Lot = EntryOf<"lot-opened">["body"] & {
  id: string;
  openedAt: string;
  /** water temperature stated last, decimal text in °C */
  waterCelsius?: string;
  /** every flag set or cleared, oldest first */
  flags: readonly FlagEntry[];
  /** a closed lot takes nothing more until it is opened again */
  closed?: Closing;
  /** everything it was ever closed with, oldest first */
  closings: readonly Closing[];
  /** the last time it was opened again */
  reopened?: EntryOf<"lot-reopened">;
};
