import type { DensityResult } from "../../calibration/density-result.ts";
import { measuredDensity } from "../../calibration/distribution.ts";
import { recordedDensity } from "../conformity/recorded-density.ts";
import { type FamilyFineness, familyFineness } from "../metals/fineness/family-fineness.ts";
import type { Library } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";
import { commonShare } from "./common-share.ts";
import type { RecordedStatement } from "./recorded-statement.ts";
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

/** The fineness that a record states; one of an earlier version, which holds no parts for sums, gives them from its density. */
export function recordedFineness(
  statement: RecordedStatement,
  { confidence, celsius, library }: { confidence: number; celsius: number; library: Library },
): FamilyFineness | null {
  const { conformity, fineness } = statement;
  const { claim, state } = conformity;
  if (state === "excluded" || state === "no-valid-reading" || claim === null) return null;
  if (fineness?.parts) return { ...fineness, parts: fineness.parts };
  if (!library.has(claim)) return null;
  const piece = {
    measured: recordedDensity(statement, confidence),
    celsius,
    massG: statement.mass_g,
    uMassG: statement.u_mass_g,
    commonShare: commonShare(statement.budget),
  };
  return familyFineness(library.metal(claim), piece, confidence, library);
}
