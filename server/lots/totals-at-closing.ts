import type { BodyOf } from "../ledger/kinds.ts";
import { flagsOf } from "./flags.ts";
import type { Lot } from "./lot.ts";
import { displayStepG, type LotItem } from "./lot-item.ts";
import { type GrossWeighing, lotSums } from "./totals.ts";

/** The weighing of the lot as a whole, with one step of its display. */
export function grossOf({ gross }: Lot): GrossWeighing | undefined {
  return gross && { grams: Number(gross.grams), stepG: displayStepG(gross) };
}

/** What is written of a lot when it is closed, beside what is paid for it. */
export type TotalsAtClosing = Pick<
  BodyOf<"lot-closed">,
  "pieces" | "sum_g" | "missing_g" | "fine_g" | "flagged"
>;

/** What a lot came to when it is closed; decimals as its displays show them, fine mass with two at least. */
export function totalsAtClosing(lot: Lot, items: readonly LotItem[]): TotalsAtClosing {
  const sums = lotSums(items, grossOf(lot), lot.count, lot.flags);
  const text = (grams: number) => grams.toFixed(Math.max(sums.decimals, 2));
  const flagged = items.filter(
    (item) =>
      !item.voided && flagsOf(item, sums.checks, lot.flags).some(({ cleared }) => cleared === undefined),
  );
  return {
    pieces: sums.pieces,
    sum_g: sums.sumG.toFixed(sums.decimals),
    ...(sums.missingG === undefined ? {} : { missing_g: sums.missingG.toFixed(sums.decimals) }),
    fine_g: Object.fromEntries(
      Object.entries(sums.fine).map(([metal, { lowG, highG }]) => [
        metal,
        { low: text(lowG), high: text(highG) },
      ]),
    ),
    flagged: flagged.length,
  };
}
