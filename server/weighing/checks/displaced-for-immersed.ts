import { solidMetal } from "../../metals/possible-densities.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { fitsClaim, hangs, isSolidMetal, roughDensity, soFar } from "./situation.ts";

/**
 * The method's wet reading was taken for the other method's: a displaced mass entered as immersed reading, or the
 * other way round. Dry minus the entry then makes a metal where the entry itself makes none.
 */
export const displacedForImmersed: ProcedureCheck = {
  code: "check.displaced-for-immersed",
  detect(situation) {
    const now = soFar(situation);
    if (now === undefined) return undefined;
    const { dryGrams, displacedGrams, gPerCm3 } = now;
    const otherwise = roughDensity(dryGrams, dryGrams - displacedGrams, situation.liquidGPerCm3);
    if (displacedGrams <= 0 || gPerCm3 >= solidMetal.low) return undefined;
    if (!isSolidMetal(otherwise) || !fitsClaim(situation, otherwise, 0.25)) return undefined;
    const hung = hangs(situation);
    return {
      severity: "stop",
      params: {
        method: situation.method,
        density_g_cm3: gPerCm3,
        entered_g: hung ? dryGrams - displacedGrams : displacedGrams,
        otherwise_g_cm3: otherwise,
      },
      remedies: [
        hung
          ? { code: "check.remedy.record-as-displaced", offer: { do: "read-as-displaced" } }
          : { code: "check.remedy.record-as-hung", offer: { do: "read-as-immersed" } },
        { code: "check.remedy.lift-clear" },
      ],
    };
  },
};
