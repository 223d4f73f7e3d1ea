import { coveringFactor } from "./covering-factor.ts";
import { type FineEnd, type FineParts, uOfEnd } from "./fine-parts.ts";

/** Fine metal of several pieces, g. */
export interface FineSum {
  lowG: number;
  highG: number;
  expectedG: number;
  uG: number;
}

/**
 * Fine metal of several pieces of one bench. What the pieces have in common (scale, water, thermometer, mixture law)
 * adds end by end: it is off for all of them the same way. What each reading brought of its own adds in squares. The free
 * rest of the alloy adds end by end, since pieces of one maker share it. The sum is cut to nothing and to what the pieces
 * weigh at its end only, so that cuts do not shift it.
 *
 * What a stamp allows is a set of recipes and no distribution: nobody knows how often a maker takes which, and pieces of
 * one lot are alike. The interval therefore covers at the confidence for the worst recipe of the set, and more for any
 * other: for a lot of sterling with copper alone as stated, for one with zinc nearly always.
 *
 * Expected is what the claims state, where the interval holds it, else its nearer end: a density tells a fineness only as
 * far as the rest of the alloy is known, while a stamp states a least fineness that makers do not exceed by more than a
 * few parts in a thousand (Convention on the Control and Marking of Articles of Precious Metals, annex I, no negative
 * tolerance; from memory). What no claim states is taken in the middle of its freedom.
 */
export function fineSum(pieces: readonly FineParts[], confidence: number): FineSum {
  const low = summed(pieces.map((piece) => piece.low));
  const high = summed(pieces.map((piece) => piece.high));
  const expected = summed(pieces.map((piece) => piece.expected));
  const [uLow, uHigh] = [uOfEnd(low), uOfEnd(high)];
  const k = coveringFactor(confidence, (high.middle_g - low.middle_g) / Math.max(uLow, uHigh, 1e-12));
  const most = total(pieces.map(({ most_g }) => most_g));
  const within = (grams: number) => Math.min(most, Math.max(0, grams));
  const [lowG, highG] = holding(pieces, [within(low.middle_g - k * uLow), within(high.middle_g + k * uHigh)]);
  const likely = total(pieces.map(({ stated_g, expected: { middle_g } }) => stated_g ?? middle_g));
  return {
    lowG,
    highG,
    expectedG: Math.min(highG, Math.max(lowG, likely)),
    uG: Math.hypot(uOfEnd(expected), total(pieces.map(({ freedom_g }) => freedom_g))),
  };
}

/**
 * A claim that is not excluded may hold what it is stamped: where its other recipes leave that out, the nearer end goes
 * there. For one piece only: pieces moved one by one would shift their sum.
 */
function holding(
  [piece, ...more]: readonly FineParts[],
  [low, high]: readonly [number, number],
): [number, number] {
  if (!piece?.stamped_g || more.length > 0) return [low, high];
  const [least, most] = piece.stamped_g;
  if (most < low) return [least, high];
  return [low, least > high ? most : high];
}

function summed(ends: readonly FineEnd[]): FineEnd {
  return {
    middle_g: total(ends.map(({ middle_g }) => middle_g)),
    common_g: total(ends.map(({ common_g }) => common_g)),
    own_g: Math.hypot(...ends.map(({ own_g }) => own_g)),
    law_g: total(ends.map(({ law_g }) => law_g)),
  };
}

const total = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0);
