import type { Remedy } from "./check.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { fitsClaim, hangs, isSolidMetal, roughDensity, soFar } from "./situation.ts";

/** An exchange is likelier where it brings the density so near the claim, as a share of its band's ends. */
const claimSlack = 0.15;

/** Dry and wet readings in each other's boxes: changed over, they make a metal; as they stand, they make nothing. */
export const boxesSwapped: ProcedureCheck = {
  code: "check.boxes-swapped",
  detect(situation) {
    const now = soFar(situation);
    if (now === undefined) return undefined;
    const { dryGrams, displacedGrams } = now;
    const hung = hangs(situation);
    const wetGrams = hung ? dryGrams - displacedGrams : displacedGrams;
    if (wetGrams <= dryGrams || dryGrams <= 0) return undefined;
    const changed = roughDensity(wetGrams, hung ? -displacedGrams : dryGrams, situation.liquidGPerCm3);
    if (!isSolidMetal(changed)) return undefined;
    const exchange: Remedy = { code: "check.remedy.change-over", offer: { do: "swap-dry-and-wet" } };
    const zero: Remedy = {
      code: hung ? "check.remedy.zero-the-hanger" : "check.remedy.zero-the-beaker",
      offer: { do: "repeat", role: "wet", instead: true },
    };
    return {
      severity: "stop",
      params: { method: situation.method, dry_g: dryGrams, wet_g: wetGrams, density_g_cm3: changed },
      // exchanged, they give another metal than the claim: a zero that was not taken is likelier
      remedies: fitsClaim(situation, changed, claimSlack) ? [exchange, zero] : [zero, exchange],
    };
  },
};
