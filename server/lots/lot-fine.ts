import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import { fineMass } from "../metals/fineness/fine-mass.ts";
import {
  goldFineness,
  goldFinenessOfMelt,
  type PermilleRange,
  silverFineness,
} from "../metals/fineness/fineness.ts";

/** A low and a high end, g. */
export interface Ends {
  lowG: number;
  highG: number;
}

/** Fine metal of one piece: its interval, and what of the interval every other piece of the lot shares. */
export interface LotFine extends Ends {
  metal: "gold" | "silver";
  permille: PermilleRange;
  /** the interval before it is cut to nothing and to the whole piece, and the most the piece can weigh, g */
  uncut: Ends;
  mostG: number;
  /** the ends that the free rest of the alloy alone leaves, measurement and law taken as exact */
  middle: Ends;
  /** the ends with what is common to all pieces: water, thermometer, linearity, wire, law of the alloy */
  common: Ends;
}

/** What is drawn anew with every reading; all else in a budget is the same for every piece weighed on that bench. */
const anew = /(repeatability|resolution at zero|resolution at load|zero drift)$/;

/** The share of the variance of a density that every piece has in common, 0 to 1; 1 where no budget is kept. */
export function commonShare(budget: readonly { input: string; share: number }[] | undefined): number {
  if (budget === undefined || budget.length === 0) return 1;
  const own = budget.filter(({ input }) => anew.test(input)).reduce((sum, { share }) => sum + share, 0);
  return Math.min(1, Math.max(0, 1 - own));
}

export interface Weighed {
  metal: LotFine["metal"];
  measured: MeasuredDensity;
  celsius: number;
  dryG: number;
  stepG: number;
  /** from commonShare */
  share: number;
  /** silver's share of the rest of gold alloy, from and to, where it is not left free */
  silver?: readonly [number, number];
}

/** The fine metal of a piece if it is sound alloy of this metal; null when no such alloy has its density. */
export function lotFine({ metal, measured, celsius, dryG, stepG, share, silver }: Weighed): LotFine | null {
  const finenessOf = (density: MeasuredDensity) =>
    metal === "silver"
      ? silverFineness(density, celsius)
      : silver
        ? goldFinenessOfMelt(density, silver, celsius)
        : goldFineness(density, "any", celsius);
  const found = finenessOf(measured);
  if (!found.possible) return null;
  const { lowG, highG } = fineMass(dryG, stepG, found.corrected);
  const ends = (part: number) => {
    const range = finenessOf(narrowed(measured, part)).uncut;
    return { lowG: (dryG * range.low) / 1000, highG: (dryG * range.high) / 1000 };
  };
  const uncut = fineMass(dryG, stepG, found.uncut);
  return {
    metal,
    lowG,
    highG,
    uncut: { lowG: uncut.lowG, highG: uncut.highG },
    mostG: dryG + stepG,
    permille: found.corrected,
    middle: ends(0),
    common: ends(Math.sqrt(share)),
  };
}

/** The same density with each side of its interval at `part` of its length; at 0 it is taken as exact. */
function narrowed(measured: MeasuredDensity, part: number): MeasuredDensity {
  const { valueGPerCm3: value, intervalGPerCm3: ends } = measured;
  const at = (end: number) => value + part * (end - value);
  // The coverage factor is interval over uncertainty: the law of the alloy keeps its own unless all is exact.
  const u = part === 0 ? measured.uGPerCm3 : measured.uGPerCm3 * part;
  return { ...measured, uGPerCm3: u, intervalGPerCm3: [at(ends[0]), at(ends[1])] };
}

/**
 * Fine metal of several pieces. What the pieces have in common adds end by end: it is off for all of them the same way.
 * What each reading brought of its own adds in squares. The free rest of the alloy adds end by end, since pieces of one
 * maker share it. The sum is cut to what the pieces can hold at its end, so that cuts do not shift it. One piece comes to its
 * own interval.
 */
export function fineSum(items: readonly LotFine[]): Ends {
  const end = (side: keyof Ends, sign: 1 | -1) => {
    const total = (of: (item: LotFine) => number) => items.reduce((sum, item) => sum + of(item), 0);
    const common = total((item) => sign * (item.common[side] - item.middle[side]));
    const own = total((item) => {
      const [whole, shared] = [item.uncut[side] - item.middle[side], item.common[side] - item.middle[side]];
      return Math.max(0, whole ** 2 - shared ** 2);
    });
    return total((item) => item.middle[side]) + sign * Math.sqrt(common ** 2 + own);
  };
  const mostG = items.reduce((sum, item) => sum + item.mostG, 0);
  return { lowG: Math.max(0, end("lowG", -1)), highG: Math.min(mostG, end("highG", 1)) };
}

/** Gold of several pieces if they are melted into one with silver's share of the rest between two ends; null without gold. */
export function goldOfMelt(items: readonly Weighed[], silver: readonly [number, number]): Ends | null {
  const fine = items.flatMap((weighed) => {
    const found = weighed.metal === "gold" ? lotFine({ ...weighed, silver }) : null;
    return found ? [found] : [];
  });
  return fine.length === 0 ? null : fineSum(fine);
}
