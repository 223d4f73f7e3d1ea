import type { Entry, EntryOf } from "../ledger/entry.ts";

/** A price locked for one metal of a lot. */
export type LotPrice = EntryOf<"lot-price">["body"] & { lockedAt: string };

/** A lot as the ledger tells it. */
export type Lot = EntryOf<"lot-opened">["body"] & {
  id: string;
  openedAt: string;
  /** water temperature stated last, decimal text in °C */
  waterCelsius?: string;
  /** the newest price of each metal */
  prices: Partial<Record<LotPrice["metal"], LotPrice>>;
};

/** The lot after its entries, oldest first; undefined when none of them opens one. */
export function lotOf(entries: readonly Entry[]): Lot | undefined {
  let lot: Lot | undefined;
  for (const entry of entries) {
    if (entry.kind === "lot-opened")
      lot = { ...entry.body, id: entry.subject, openedAt: entry.at, prices: {} };
    else if (lot && entry.kind === "lot-water") lot = { ...lot, waterCelsius: entry.body.celsius };
    else if (lot && entry.kind === "lot-price")
      lot = { ...lot, prices: { ...lot.prices, [entry.body.metal]: { ...entry.body, lockedAt: entry.at } } };
  }
  return lot;
}
