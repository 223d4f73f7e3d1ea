import type { ProcedureCheck } from "./procedure-check.ts";
import { fitsClaim, meanGrams, roughDensity, soFar } from "./situation.ts";

/**
 * A hanger was stated as weighed in, but the immersed reading does not hold it: taken as it stands, a claim or at least
 * a metal appears, and less the hanger none does.
 */
export const hangerInImmersed: ProcedureCheck = {
  code: "check.hanger-in-immersed",
  detect(situation) {
    const now = soFar(situation);
    const { hangerGrams } = situation;
    const wetGrams = meanGrams(situation.wet);
    if (now === undefined || hangerGrams === undefined || wetGrams === undefined) return undefined;
    const { dryGrams, displacedGrams, gPerCm3 } = now;
    if (displacedGrams > 0 && fitsClaim(situation, gPerCm3, 0.005)) return undefined;
    const asRead = dryGrams - wetGrams;
    const otherwise = roughDensity(dryGrams, asRead, situation.liquidGPerCm3);
    if (asRead <= 0 || !fitsClaim(situation, otherwise, 0.005)) return undefined;
    return {
      severity: "stop",
      params: { wet_g: wetGrams, hanger_g: hangerGrams, otherwise_g_cm3: otherwise },
      remedies: [
        { code: "check.remedy.take-hanger-out" },
        { code: "check.remedy.hang-and-zero", offer: { do: "repeat", role: "zero" } },
      ],
    };
  },
};
