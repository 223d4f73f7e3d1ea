import { stepGrams } from "../../calibration/units.ts";
import type { Capture } from "./item.ts";

/**
 * Readability d in g, from the decimals the readings themselves show: 31.10 g shows d = 0.01 g. Of several readings
 * the coarsest counts, since a balance of two ranges shows fewer decimals above its first. Throws TypeError when
 * there is no reading.
 */
export function readabilityGrams(captures: readonly Capture[]): number {
  if (captures.length === 0) throw new TypeError("no reading to see a readability in");
  return Math.max(...captures.map(({ text, unit }) => stepGrams(text, unit)));
}
