import type { ProcedureCheck } from "./procedure-check.ts";
import { hangs, isSolidMetal, roughDensity, soFar } from "./situation.ts";

/** Dry and wet readings in each other's boxes: changed over, they make a metal; as they stand, they make nothing. */
export const boxesSwapped: ProcedureCheck = {
  code: "check.boxes-swapped",
  look(situation) {
    const now = soFar(situation);
    if (now === undefined) return undefined;
    const { dryGrams, displacedGrams } = now;
    const hung = hangs(situation);
    const wetGrams = hung ? dryGrams - displacedGrams : displacedGrams;
    if (wetGrams <= dryGrams || dryGrams <= 0) return undefined;
    const changed = roughDensity(wetGrams, hung ? -displacedGrams : dryGrams, situation.liquidGPerCm3);
    if (!isSolidMetal(changed)) return undefined;
    return {
      severity: "stop",
      params: { method: situation.method, dry_g: dryGrams, wet_g: wetGrams, density_g_cm3: changed },
      remedies: [
        { code: "check.remedy.change-over", offer: { do: "swap-dry-and-wet" } },
        { code: hung ? "check.remedy.zero-the-hanger" : "check.remedy.zero-the-beaker" },
      ],
    };
  },
};
