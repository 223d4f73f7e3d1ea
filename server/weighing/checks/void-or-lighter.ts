import { outsideClaim } from "./claim-distance.ts";
import { climb } from "./climb.ts";
import { dryMassChanged } from "./dry-mass-changed.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { displacedInOrder, type Situation, scatterGrams } from "./situation.ts";

/**
 * Low, and every way in which the procedure lowers a density has left no trace: the immersions agree, so nothing filled
 * and no bubble left, and the piece dried to the mass it had, so it drank nothing. What is left is inside the piece.
 */
export function isLowAndTight(situation: Situation): boolean {
  const { dryAfter = [] } = situation;
  const displaced = displacedInOrder(situation);
  if (outsideClaim(situation)?.side !== "below" || dryAfter.length === 0 || displaced.length < 2)
    return false;
  if (dryMassChanged.detect(situation) !== undefined || climb(situation).runs !== "neither") return false;
  const spread = Math.max(...displaced) - Math.min(...displaced);
  return spread <= 3 * Math.SQRT2 * scatterGrams(situation, "wet");
}

/** A closed void or a lighter alloy: one sentence that joins what three readings say. */
export const voidOrLighter: ProcedureCheck = {
  code: "check.void-or-lighter",
  detect(situation) {
    const outside = outsideClaim(situation);
    const { claim } = situation;
    if (outside === undefined || claim === undefined || !isLowAndTight(situation)) return undefined;
    const share = 100 * (1 - outside.gPerCm3 / claim.lowGPerCm3);
    return {
      severity: "warn",
      params: {
        density_g_cm3: outside.gPerCm3,
        claim: claim.metal,
        low_g_cm3: claim.lowGPerCm3,
        void_percent: share,
      },
      remedies: [{ code: "check.remedy.ultrasound" }, { code: "check.remedy.drilled-sample" }],
    };
  },
};
