import type { PlannedWeighing } from "../conformity/plan/planned-weighing.ts";
import type { Conditions } from "./conditions.ts";
import type { balanceFor } from "./request.ts";

/** What a plan takes over from the bench, so that it foresees what the bench will state of the same weighing. */
export function plannedOn(
  balance: ReturnType<typeof balanceFor>,
  conditions: Conditions,
): Omit<PlannedWeighing, "claim" | "method" | "pieces" | "massG"> {
  return {
    readabilityG: balance.readability_g,
    repeatabilityG: balance.repeatability_g,
    immersedRepeatabilityG: balance.immersed_repeatability_g,
    linearityG: balance.linearity_g,
    wireMm: Number(conditions.wireMillimetres),
    uCelsius: Number(conditions.thermometerHalfWidthCelsius) / Math.sqrt(3),
    purity: conditions.purity,
    dissolvedSolidsMgPerL: Number(conditions.dissolvedSolidsMgPerL),
    bubbleAllowanceMg: Number(conditions.bubbleAllowanceMg),
    altitudeMetres: Number(conditions.altitudeMetres),
    confidence: Number(conditions.confidencePercent) / 100,
  };
}
