import type { DensityResult } from "../../calibration/density-result.ts";
import { measuredDensity } from "../../calibration/distribution.ts";
import { message } from "../../calibration/message.ts";
import type { ComputeRequest } from "../compute/contract.ts";
import { called } from "../metals/called.ts";
import { type FinenessContext, familyFineness } from "../metals/fineness/family-fineness.ts";
import type { LaboratoryResult } from "../metals/fineness/laboratory-results.ts";
import type { Metal } from "../metals/metal.ts";
import { commonShare } from "./common-share.ts";
import type { StatedCheck, StatedFineness } from "./statement-shape.ts";

/** Fineness of sound alloy of the claim; null for other metals and where no such alloy has the density. */
export function finenessOf(
  claimed: Metal,
  result: DensityResult,
  context: FinenessContext,
): StatedFineness | null {
  const piece = {
    measured: measuredDensity(result),
    celsius: result.liquidCelsius,
    massG: result.massGrams,
    uMassG: result.uMassGrams,
    commonShare: commonShare(result.budget),
  };
  return familyFineness(claimed, piece, context);
}

/** The laboratory results that a request gives, in the terms of fineness. */
export function resultsOf({ laboratory_results: given }: ComputeRequest): LaboratoryResult[] | undefined {
  return given?.map(({ permille, u_permille, density_20_g_cm3, u_density_g_cm3 }) => ({
    permille,
    uPermille: u_permille,
    gPerCm3: density_20_g_cm3,
    uGPerCm3: u_density_g_cm3,
  }));
}

/** Says where a piece alloyed like those that a laboratory assayed would not hold what it is stamped. */
export function unlikeResults(fineness: StatedFineness | null, claimed: Metal | undefined): StatedCheck[] {
  const { results, like_them: like } = fineness?.laboratory_results ?? {};
  if (!claimed || !results || !like || like.holds_stamp) return [];
  const [low_permille, high_permille] = like.permille;
  const { code, params = {} } = message("conformity.unlike-results", {
    claim: called(claimed),
    results,
    low_permille,
    high_permille,
  });
  return [{ code, severity: "warn", params, remedies: [] }];
}
