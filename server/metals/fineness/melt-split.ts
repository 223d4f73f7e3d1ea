import { mean } from "../../../calibration/mean.ts";
import { studentQuantile } from "../../../calibration/student.ts";
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
 * What the melts so far foretell of one further melt: mean ± t·s·√(1 + 1/n) with n − 1 degrees of freedom, the prediction
 * interval for one further observation from a normal population (ISO 16269-8, clause from memory; mean and sample
 * standard deviation as JCGM 100:2008, 4.2.1 and 4.2.2, from memory). It holds for melts of the same kind of scrap. The
 * scatter carries the uncertainty of each share, so the interval is rather too wide than too narrow. Shares of different
 * melts, independent of one another. Throws RangeError for fewer than `fewestMelts` or a confidence outside 0 to 1.
 */
export function meltSplit(shares: readonly number[], confidence: number): MeltSplit {
  const melts = shares.length;
  if (melts < fewestMelts)
    throw new RangeError(
      `${melts} melts with an assay: right is ${fewestMelts} or more, before they foretell another.`,
    );
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError(`Confidence ${confidence}: right is a share between 0 and 1, such as 0.95.`);
  const middle = mean(shares);
  const s = Math.sqrt(shares.reduce((sum, one) => sum + (one - middle) ** 2, 0) / (melts - 1));
  const half = studentQuantile((1 + confidence) / 2, melts - 1) * s * Math.sqrt(1 + 1 / melts);
  const held = (share: number) => Math.min(1, Math.max(0, share));
  return { melts, mean: middle, s, next: [held(middle - half), held(middle + half)], confidence };
}
