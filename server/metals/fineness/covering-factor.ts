import { normalBelow, normalQuantile } from "../../../calibration/normal.ts";

/**
 * Factor for a quantity known to lie between two ends, each uncertain: with both ends widened by it the true value is
 * covered at the confidence wherever between the ends it lies. From 2 where the ends meet (95.45 %) to 1.69 where they
 * are far apart, since then only one side can miss (Imbens and Manski, Econometrica 72 (2004) 1845; from memory).
 * `width` is the distance of the ends in standard uncertainties of an end.
 */
export function coveringFactor(confidence: number, width: number): number {
  let [low, high] = [normalQuantile(confidence), normalQuantile((1 + confidence) / 2)];
  for (let i = 0; i < 40; i++) {
    const k = (low + high) / 2;
    if (normalBelow(k + Math.max(0, width)) - normalBelow(-k) < confidence) low = k;
    else high = k;
  }
  return (low + high) / 2;
}
