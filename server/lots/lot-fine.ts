import { goldLike, type WeighedPiece } from "../metals/fineness/family-fineness.ts";
import type { FineParts } from "../metals/fineness/fine-parts.ts";
import { fineSum } from "../metals/fineness/fine-sum.ts";
import type { RestOfResults } from "../metals/fineness/laboratory-results.ts";
import type { PreciousMetal } from "../metals/precious-metal.ts";

/** A low and a high end, g. */
export interface Ends {
  lowG: number;
  highG: number;
}

/** Fine metal of one piece, as its statement says it. */
export interface LotFine extends Ends {
  metal: PreciousMetal;
  permille: { low: number; high: number };
  parts: FineParts;
  /** over everything its claim allows, where laboratory results on other pieces of the claim narrow it */
  unnarrowed?: LotFine;
  /** of the interval, such as 0.9545 */
  confidence: number;
}

/** What the fine metal of a piece is computed from. */
export interface Weighed extends WeighedPiece {
  metal: PreciousMetal;
}

/** Fine metal of several pieces, as `fineSum` adds it, at the lowest confidence among them; of none, nothing. */
export function fineOf(
  items: readonly Pick<LotFine, "parts" | "confidence">[],
): Ends & { expectedG: number } {
  if (items.length === 0) return { lowG: 0, highG: 0, expectedG: 0 };
  return fineSum(
    items.map(({ parts }) => parts),
    Math.min(...items.map(({ confidence }) => confidence)),
  );
}

/** Gold of several pieces if they are melted into one that is alloyed like assayed melts; null without gold. */
export function goldOfMelt(items: readonly Weighed[], rest: RestOfResults): Ends | null {
  const fine = items.flatMap((weighed) => {
    const { confidence } = weighed.measured;
    const found = weighed.metal === "gold" ? goldLike(rest, weighed, confidence) : null;
    if (!found) return [];
    const [low, high] = found.permille;
    const [lowG, highG] = found.fine_g;
    return [{ metal: weighed.metal, lowG, highG, permille: { low, high }, parts: found.parts, confidence }];
  });
  return fine.length === 0 ? null : fineOf(fine);
}
