import {
  exactly,
  type Fraction,
  product,
  type Rounding,
  ratio,
  roundedText,
} from "../../calibration/fraction.ts";
import { gramsPerUnit } from "../../calibration/units.ts";
import type { EntryOf } from "../ledger/entry.ts";

/** A price promised for one metal of a lot, with its entry and when it was written. */
export type LotPrice = EntryOf<"lot-price">["body"] & { entry: string; lockedAt: string };

/** Pay for a fine mass in g: fine mass in the unit of the price × price × rate, exact and not yet rounded. */
export function payFor(
  fineG: Fraction,
  { price, per, ratePercent }: Pick<LotPrice, "price" | "per" | "ratePercent">,
): Fraction {
  const units = ratio(fineG, exactly(gramsPerUnit[per]));
  return ratio(product(units, exactly(price), exactly(ratePercent)), exactly("100"));
}

/** Money as it is paid: rounded once, in the stated direction, to the smallest unit of its currency. */
export function money(amount: Fraction, currency: string, rounding: Rounding): string {
  return roundedText(amount, minorDigits(currency), rounding);
}

/** Decimals of a currency (ISO 4217, as the Unicode data of the runtime hold it); 2 for one it does not know. */
export function minorDigits(currency: string): number {
  const { maximumFractionDigits } = new Intl.NumberFormat("en", {
    style: "currency",
    currency,
  }).resolvedOptions();
  return maximumFractionDigits ?? 2;
}
