import type { DensityResult } from "../../calibration/density-result.ts";
import { measuredDensity } from "../../calibration/distribution.ts";
import { familyFineness } from "../metals/fineness/family-fineness.ts";
import type { Library } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";
import { commonShare } from "./common-share.ts";
import type { StatedFineness } from "./statement-shape.ts";

/** Fineness of sound alloy of the claim; null for other metals and where no such alloy has the density. */
export function finenessOf(
  claimed: Metal,
  result: DensityResult,
  confidence: number,
  library: Library,
): StatedFineness | null {
  const piece = {
    measured: measuredDensity(result),
    celsius: result.liquidCelsius,
    massG: result.massGrams,
    uMassG: result.uMassGrams,
    commonShare: commonShare(result.budget),
  };
  return familyFineness(claimed, piece, confidence, library);
}
