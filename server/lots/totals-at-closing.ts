import type { BodyOf } from "../ledger/kinds.ts";
import { flagsOf } from "./flags.ts";
import type { Lot } from "./lot.ts";
import type { LotItem } from "./lot-item.ts";
import type { LotSums } from "./totals.ts";

/** What is written of a lot when it is closed, beside what is paid for it. */
export type TotalsAtClosing = Pick<
  BodyOf<"lot-closed">,
  "pieces" | "sum_g" | "missing_g" | "fine_g" | "flagged"
>;

/** What a lot came to when it is closed; decimals as its displays show them, fine mass with two at least. */
export function totalsAtClosing(lot: Lot, items: readonly LotItem[], sums: LotSums): TotalsAtClosing {
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
