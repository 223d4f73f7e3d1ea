import { compared, exactly, type Fraction, less, zero } from "../../calibration/fraction.ts";
import type { LotItem } from "../lots/lot-item.ts";
import type { Library } from "../metals/library.ts";
import { type Limits, limitPassedBy } from "../weighing/second-person.ts";
import type { LotPrice } from "./price.ts";
import type { Settled } from "./settlement.ts";
import { worthAtPrice } from "./worth.ts";

/** Above which a second person agrees to what changes a settlement; decimal text, empty for never. */
export interface Policy extends Limits {
  /** of what is paid for the lot, in the currency of its prices */
  change: string;
}

/** A change of a settlement: the pieces it is about, and what is paid without it and with it. */
export interface Change {
  /** all of the lot for a price and for whom to believe */
  items: readonly LotItem[];
  isOfLot: boolean;
  before: Settled | undefined;
  after: Settled | undefined;
  prices: readonly LotPrice[];
}

/** The limit that a change passes, as text such as "800 EUR"; undefined when it passes none. A first price changes nothing. */
export function limitOfChange(
  { items, isOfLot, before, after, prices }: Change,
  policy: Policy,
  library: Library,
): string | undefined {
  const changed = before && after && currencyChangedBy(policy.change, before, after);
  if (changed !== undefined) return `${policy.change} ${changed}`;
  if (isOfLot) {
    const [most] = (after?.totals ?? []).toSorted((one, other) => Number(other.paid) - Number(one.paid));
    const sumG = items.reduce((sum, { counts, dryG }) => sum + (counts ? dryG : 0), 0);
    return limitPassedBy(sumG, policy, most && { amount: Number(most.paid), currency: most.currency });
  }
  const limits = items.map(({ claim, dryG }) => {
    const claimed = claim !== null && library.has(claim) ? library.metal(claim) : undefined;
    return limitPassedBy(dryG, policy, worthAtPrice(dryG, claimed, prices));
  });
  return limits.find((limit) => limit !== undefined);
}

/** The first currency whose sum changes by more than this. */
function currencyChangedBy(limit: string, before: Settled, after: Settled): string | undefined {
  if (limit === "") return undefined;
  const paid = ({ totals }: Settled, of: string): Fraction => {
    const found = totals.find(({ currency }) => currency === of);
    return found ? exactly(found.paid) : zero;
  };
  const currencies = [...before.totals, ...after.totals].map(({ currency }) => currency);
  const most = exactly(limit);
  const isMore = (one: Fraction, other: Fraction) => compared(less(one, other), most) > 0;
  return currencies.find((of) => {
    const [was, is] = [paid(before, of), paid(after, of)];
    return isMore(was, is) || isMore(is, was);
  });
}
