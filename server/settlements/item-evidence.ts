import type { Fraction } from "../../calibration/fraction.ts";
import type { LotItem } from "../lots/lot-item.ts";
import { type WeighedAgain, weighedAgain } from "../lots/weighed-again.ts";
import type { PreciousMetal } from "../metals/precious-metal.ts";

/** What a melt that a piece went into gave back of one metal. */
export interface MeltYield {
  metal: PreciousMetal;
  /** fine metal over the mass of the lot by its pieces, or over what was put in where that is more */
  share: Fraction;
  /** the melt, and the entry that settled it */
  melt: string;
  entry: string;
}

/** What is known of a piece when its lot is settled, beside what people say of it. */
export interface ItemEvidence {
  item: LotItem;
  melts: readonly MeltYield[];
  /** set where it came back to the pan with another dry mass */
  changed?: WeighedAgain;
}

/** The same of every piece of a lot; `melts` are those that the lot went into. */
export function evidenceOf(items: readonly LotItem[], melts: readonly MeltYield[] = []): ItemEvidence[] {
  return items.map((item) => {
    const changed = weighedAgain(item, items);
    return { item, melts, ...(changed ? { changed } : {}) };
  });
}
