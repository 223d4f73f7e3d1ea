import { gramsPerUnit } from "../../calibration/units.ts";
import type { LotPrice } from "./lot.ts";
import type { LotPiece } from "./lot-piece.ts";

/** Pieces of one claim as the worksheet counts them; masses in g, money in the currency of the price. */
export interface PayoutLine {
  claim: string;
  metal: LotPrice["metal"];
  pieces: number;
  netG: number;
  fineLowG: number;
  fineHighG: number;
  payLow: number;
  payHigh: number;
}

/**
 * Money to two decimals in the stated direction. A figure that is a cent exactly, but for binary rounding, stays.
 * half-even is rounding to the nearest with ties to the even digit (ISO 80000-1, annex B, rule A; from memory).
 */
export function rounded(amount: number, direction: LotPrice["rounding"]): number {
  const cents = Number((amount * 100).toPrecision(12));
  const floor = Math.floor(cents);
  if (direction === "down") return floor / 100;
  if (direction === "up") return Math.ceil(cents) / 100;
  const rest = cents - floor;
  const up = rest > 0.5 || (rest === 0.5 && floor % 2 !== 0);
  return (up ? floor + 1 : floor) / 100;
}

/** Pay for a fine mass: fine mass in the unit of the price × price × rate, not yet rounded. */
export function payFor(fineG: number, { price, per, ratePercent }: LotPrice): number {
  return (fineG / Number(gramsPerUnit[per])) * Number(price) * (Number(ratePercent) / 100);
}

/** Lines by claim, for the metals that have a price. Each end is rounded once, in the stated direction. */
export function payoutLines(
  pieces: readonly LotPiece[],
  prices: Partial<Record<LotPrice["metal"], LotPrice>>,
): PayoutLine[] {
  const byClaim = new Map<string, LotPiece[]>();
  for (const piece of pieces)
    if (!piece.voided && piece.fine && prices[piece.fine.metal] && piece.claim !== null)
      byClaim.set(piece.claim, [...(byClaim.get(piece.claim) ?? []), piece]);
  return [...byClaim].flatMap(([claim, same]) => {
    const metal = same[0]?.fine?.metal;
    const price = metal && prices[metal];
    if (!metal || !price) return [];
    const fineLowG = same.reduce((sum, { fine }) => sum + (fine?.lowG ?? 0), 0);
    const fineHighG = same.reduce((sum, { fine }) => sum + (fine?.highG ?? 0), 0);
    return [
      {
        claim,
        metal,
        pieces: same.length,
        netG: same.reduce((sum, { dryG }) => sum + dryG, 0),
        fineLowG,
        fineHighG,
        payLow: rounded(payFor(fineLowG, price), price.rounding),
        payHigh: rounded(payFor(fineHighG, price), price.rounding),
      },
    ];
  });
}
