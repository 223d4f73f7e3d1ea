import type { EntryOf } from "../ledger/entry.ts";
import type { FlagEntry } from "./flags.ts";

/** A price locked for one metal of a lot. */
export type LotPrice = EntryOf<"lot-price">["body"] & { lockedAt: string };

/** What settles a piece beside its density: stones off its mass, a fineness somebody states. */
export type ItemTerms = EntryOf<"lot-terms">["body"];

/** A lot as the ledger tells it. */
export type Lot = EntryOf<"lot-opened">["body"] & {
  id: string;
  openedAt: string;
  /** water temperature stated last, decimal text in °C */
  waterCelsius?: string;
  /** the newest price of each metal */
  prices: Partial<Record<LotPrice["metal"], LotPrice>>;
  /** every flag set or cleared, oldest first */
  flags: readonly FlagEntry[];
  /** the newest terms of each piece, by its id */
  terms: Readonly<Record<string, ItemTerms & { statedAt: string }>>;
  /** a closed lot takes no more pieces */
  closed?: { at: string } & EntryOf<"lot-closed">["body"];
};
