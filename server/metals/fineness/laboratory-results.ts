import { mean } from "../../../calibration/mean.ts";
import { prediction } from "../../../calibration/prediction-interval.ts";
import { mixtureDensity } from "../mixture.ts";
import type { FineParts } from "./fine-parts.ts";
import type { PreciousElement } from "./precious-element.ts";
import type { RestCorner } from "./rest-corner.ts";

/** Fewer results than this say nothing of the next (choice of this program: below it t widens the interval past use). */
export const fewestResults = 5;

/** A sound piece, or melt, that was weighed here and whose fineness a laboratory found. Uncertainties are standard ones. */
export interface LaboratoryResult {
  /** above 0 and below 1000, ‰ */
  permille: number;
  uPermille: number;
  /** at 20 °C */
  gPerCm3: number;
  uGPerCm3: number;
}

/** How pieces that a laboratory assayed were alloyed, as the volume of what is beside their precious metal. */
export interface RestOfResults {
  results: number;
  /** where the rest of one further such piece lies, cm³/g */
  cm3PerG: readonly [low: number, high: number];
  corners: readonly RestCorner[];
}

/**
 * What laboratory results foretell of the rest of one further piece of the same claim, or melt of the same scrap. Fineness w and density ρ of a result
 * give the volume of its rest, (1/ρ − w·v) / (1 − w) with v that of the precious metal alone: zinc, pores and the excess
 * of mixing are in it as they are in the pieces. The interval is a prediction for one further piece like them; a scatter
 * below the uncertainty of the results themselves counts as that. Null for fewer than five results.
 */
export function restOfResults(
  element: PreciousElement,
  results: readonly LaboratoryResult[],
  confidence: number,
): RestOfResults | null {
  if (results.length < fewestResults) return null;
  const pure = 1 / mixtureDensity({ [element]: 1 }).correctedGPerCm3;
  const rests = results.map((one) => restOf(one, pure));
  const u = Math.sqrt(mean(rests.map((one) => one.u ** 2)));
  const { mean: middle, half } = prediction(
    rests.map(({ cm3PerG }) => cm3PerG),
    confidence,
    u,
  );
  const share = mean(results.map(({ permille }) => permille)) / 1000;
  const corner = (rest: number): RestCorner => ({
    share,
    cm3PerG: share * pure + (1 - share) * rest,
    uCm3PerG: 0,
    slope: pure - rest,
  });
  const [low, high] = [middle - half, middle + half];
  return { results: results.length, cm3PerG: [low, high], corners: [low, high].map(corner) };
}

function restOf({ permille, uPermille, gPerCm3, uGPerCm3 }: LaboratoryResult, pure: number) {
  const share = permille / 1000;
  const cm3PerG = (1 / gPerCm3 - share * pure) / (1 - share);
  const byShare = (cm3PerG - pure) * (uPermille / 1000);
  return { cm3PerG, u: Math.hypot(uGPerCm3 / gPerCm3 ** 2, byShare) / (1 - share) };
}

/** The narrower of two freedoms at each end. Null where they leave nothing between them. */
export function narrower(family: FineParts, byResults: FineParts): FineParts | null {
  const low = family.low.middle_g > byResults.low.middle_g ? family.low : byResults.low;
  const high = family.high.middle_g < byResults.high.middle_g ? family.high : byResults.high;
  if (low.middle_g > high.middle_g) return null;
  const freedom_g = (high.middle_g - low.middle_g) / Math.sqrt(12);
  return { ...family, low, high, expected: byResults.expected, freedom_g };
}
