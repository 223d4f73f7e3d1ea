import { solidMetal } from "../../metals/possible-densities.ts";
import { boxesSwapped } from "./boxes-swapped.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { rises, scatterGrams, soFar } from "./situation.ts";

/** Nothing, or less than nothing, was displaced, and changing the boxes over does not explain it. */
export const displacementNegative: ProcedureCheck = {
  code: "check.displacement-negative",
  detect(situation) {
    const now = soFar(situation);
    const scatter = scatterGrams(situation, "wet");
    if (now === undefined || now.displacedGrams > scatter) return undefined;
    // a scale too coarse for the piece sees nothing of the densest metal either
    if (now.displacedGrams > 0 && now.dryGrams / solidMetal.high < 3 * scatter) return undefined;
    if (now.dryGrams <= 0 || boxesSwapped.detect(situation) !== undefined) return undefined;
    if (rises(situation) && Math.abs(now.displacedGrams) <= 3 * scatter) return undefined; // a rise of nothing: the piece is not in the water
    return {
      severity: "stop",
      params: { method: situation.method, displaced_g: now.displacedGrams },
      remedies: [
        { code: "check.remedy.zero-at-mark", offer: { do: "repeat", role: "zero" } },
        { code: "check.remedy.immerse-fully", offer: { do: "repeat", role: "wet" } },
      ],
    };
  },
};
