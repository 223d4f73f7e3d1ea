import { gramsPerUnit } from "../../calibration/units.ts";
import type { ItemTerms, LotPrice } from "./lot.ts";
import { fineOf } from "./lot-fine.ts";
import type { LotItem } from "./lot-item.ts";

/** Pieces of one claim as the worksheet counts them; masses in g, money in the currency of the price. */
export interface PayoutLine {
  claim: string;
  metal: LotPrice["metal"];
  /** who says the fineness: the density of all pieces of the claim, or for one piece a stamp, a laboratory, a customer */
  saidBy: "density" | NonNullable<ItemTerms["fineness"]>["saidBy"];
  tickets: readonly string[];
  netG: number;
  /** stones and other parts taken off the mass */
  deductedG: number;
  fineLowG: number;
  fineHighG: number;
  payLow: number;
  payHigh: number;
  /** beside a stated fineness: what the density says, ‰, and whether both can be true */
  beside?: { lowPermille: number; highPermille: number; fits: boolean };
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
export function payFor(
  fineG: number,
  { price, per, ratePercent }: Pick<LotPrice, "price" | "per" | "ratePercent">,
): number {
  return (fineG / Number(gramsPerUnit[per])) * Number(price) * (Number(ratePercent) / 100);
}

type Prices = Partial<Record<LotPrice["metal"], LotPrice>>;
type Terms = Readonly<Record<string, ItemTerms>>;

/**
 * Lines by claim from the density, and a line of its own for each piece whose fineness somebody states. Each end is
 * rounded once, in the stated direction. `left` are pieces that bring no line though their metal has a price: with stones
 * taken off, the density of the whole says nothing of the metal, so that a fineness must be stated.
 */
export function payoutLines(
  items: readonly LotItem[],
  prices: Prices,
  terms: Terms = {},
): { lines: PayoutLine[]; left: string[] } {
  const counting = items.filter(({ counts, metal, claim }) => counts && metal && prices[metal] && claim);
  const lines: PayoutLine[] = [];
  const left: string[] = [];
  const byClaim = new Map<string, LotItem[]>();
  for (const item of counting) {
    const of = terms[item.id];
    if (of?.fineness) lines.push(statedLine(item, of, prices));
    else if (Number(of?.deducted_g ?? 0) > 0) left.push(item.ticket);
    else if (item.fine) byClaim.set(item.claim!, [...(byClaim.get(item.claim!) ?? []), item]);
  }
  const byDensity = [...byClaim].map(([claim, same]) => densityLine(claim, same, prices));
  return { lines: [...byDensity, ...lines], left };
}

function densityLine(claim: string, same: readonly LotItem[], prices: Prices): PayoutLine {
  const fine = same.flatMap((item) => (item.fine ? [item.fine] : []));
  const { lowG, highG } = fineOf(fine);
  const metal = same[0]!.metal!;
  return {
    claim,
    metal,
    saidBy: "density",
    tickets: same.map(({ ticket }) => ticket),
    netG: same.reduce((sum, { dryG }) => sum + dryG, 0),
    deductedG: 0,
    ...paid(lowG, highG, prices[metal]!),
  };
}

function statedLine(item: LotItem, { deducted_g = "0", fineness }: ItemTerms, prices: Prices): PayoutLine {
  const metal = item.metal!;
  const permille = Number(fineness!.permille);
  const deductedG = Number(deducted_g);
  const netG = item.dryG - deductedG;
  const fineG = (netG * permille) / 1000;
  const range = deductedG > 0 ? undefined : item.fine?.permille;
  return {
    claim: item.claim!,
    metal,
    saidBy: fineness!.saidBy,
    tickets: [item.ticket],
    netG,
    deductedG,
    ...paid(fineG, fineG, prices[metal]!),
    ...(range
      ? {
          beside: {
            lowPermille: range.low,
            highPermille: range.high,
            fits: permille >= range.low && permille <= range.high,
          },
        }
      : {}),
  };
}

function paid(fineLowG: number, fineHighG: number, price: LotPrice) {
  return {
    fineLowG,
    fineHighG,
    payLow: rounded(payFor(fineLowG, price), price.rounding),
    payHigh: rounded(payFor(fineHighG, price), price.rounding),
  };
}
