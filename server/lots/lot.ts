import type { Entry, EntryOf } from "../ledger/entry.ts";
import type { FlagEntry } from "./flags.ts";

/** A price locked for one metal of a lot. */
export type LotPrice = EntryOf<"lot-price">["body"] & { lockedAt: string };

/** What settles a piece beside its density: stones off its mass, a fineness somebody states. */
export type PieceTerms = EntryOf<"lot-terms">["body"];

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
  terms: Readonly<Record<string, PieceTerms & { statedAt: string }>>;
  /** a closed lot takes no more pieces */
  closed?: { at: string } & EntryOf<"lot-closed">["body"];
};

/** The lot after its entries, oldest first; undefined when none of them opens one. */
export function lotOf(entries: readonly Entry[]): Lot | undefined {
  let lot: Lot | undefined;
  for (const entry of entries)
    lot =
      entry.kind === "lot-opened"
        ? { ...entry.body, id: entry.subject, openedAt: entry.at, prices: {}, flags: [], terms: {} }
        : lot && withEntry(lot, entry);
  return lot;
}

function withEntry(lot: Lot, entry: Entry): Lot {
  switch (entry.kind) {
    case "lot-water":
      return { ...lot, waterCelsius: entry.body.celsius };
    case "lot-price":
      return {
        ...lot,
        prices: { ...lot.prices, [entry.body.metal]: { ...entry.body, lockedAt: entry.at } },
      };
    case "lot-flag":
      return { ...lot, flags: [...lot.flags, entry] };
    case "lot-terms":
      return { ...lot, terms: { ...lot.terms, [entry.body.piece]: { ...entry.body, statedAt: entry.at } } };
    case "lot-closed":
      return { ...lot, closed: { ...entry.body, at: entry.at } };
    default:
      return lot;
  }
}
