import { solidMetal } from "../../metals/possible-densities.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { hangs, rises, scatterGrams, soFar } from "./situation.ts";

/** The piece displaces more than it weighs: it floats and is held under, or it is hollow. */
export const floats: ProcedureCheck = {
  code: "check.floats",
  detect(situation) {
    const now = soFar(situation);
    if (now === undefined || now.dryGrams <= 0) return undefined;
    const { dryGrams, displacedGrams, gPerCm3 } = now;
    const over = displacedGrams - dryGrams;
    // a sinker that was weighed in holds it under: that is how such a piece is measured
    if (hangs(situation) && (situation.hangerGrams ?? 0) > over) return undefined;
    const swapped = rises(situation) && displacedGrams / dryGrams >= solidMetal.low;
    const within = Math.max(3 * scatterGrams(situation, "wet"), hangs(situation) ? 0 : 0.02 * dryGrams);
    if (over <= within || swapped) return undefined;
    return {
      severity: "stop",
      params: { dry_g: dryGrams, displaced_g: displacedGrams, density_g_cm3: gPerCm3 },
      remedies: [
        { code: "check.remedy.hollow-aside" },
        { code: "check.remedy.use-a-sinker" },
        { code: "check.remedy.zero-was-lost", offer: { do: "repeat", role: "zero" } },
      ],
    };
  },
};
