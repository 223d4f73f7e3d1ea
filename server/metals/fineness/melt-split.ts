import { prediction } from "../../../calibration/prediction-interval.ts";
import type { SilverShare } from "./silver-share.ts";

/** Fewer melts than this say nothing of the next (choice of this program: below it t widens the interval past use). */
export const fewestMelts = 5;

/** A share less certain than this, one standard uncertainty, is no evidence of a split: near fine gold there is hardly a rest. */
const leastKnown = 0.25;

/** How silver and copper shared the rest in the melts of one organisation. */
export interface MeltSplit {
  melts: number;
  /** arithmetic mean of silver's share */
  mean: number;
  /** sample standard deviation of one melt, n − 1 */
  s: number;
  /** where the share of one further melt like them lies, within 0 and 1 */
  next: readonly [low: number, high: number];
  confidence: number;
}

/** True when a share is known well enough to say anything. */
export function isCertain({ u }: SilverShare): boolean {
  return u <= leastKnown;
}

/** True when a melt tells a split: known well enough, and one of silver and copper within twice its uncertainty. */
export function tellsSplit(split: SilverShare): boolean {
  const { share, u } = split;
  return isCertain(split) && share >= -2 * u && share <= 1 + 2 * u;
}

/**
 * What the melts so far foretell of one further melt of the same kind of scrap. The scatter carries the uncertainty of
 * each share, so the interval is rather too wide than too narrow. Shares of different melts, independent of one another.
 * Throws RangeError for fewer than `fewestMelts` or a confidence outside 0 to 1.
 */
export function meltSplit(shares: readonly number[], confidence: number): MeltSplit {
  const melts = shares.length;
  if (melts < fewestMelts)
    throw new RangeError(
      `${melts} melts with an assay: right is ${fewestMelts} or more, before they foretell another.`,
    );
  const { mean, s, half } = prediction(shares, confidence);
  const held = (share: number) => Math.min(1, Math.max(0, share));
  return { melts, mean, s, next: [held(mean - half), held(mean + half)], confidence };
}
