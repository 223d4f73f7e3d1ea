import { mean } from "../../../calibration/mean.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { soFar } from "./situation.ts";

/** Taken and lifted before bubbles could be excluded that would move the density by more than its U. */
export const creepPossible: ProcedureCheck = {
  code: "check.creep-possible",
  detect(situation) {
    const { wet, density } = situation;
    const displaced = soFar(situation)?.displacedGrams;
    const possible = wet.length === 0 ? 0 : mean(wet.map(({ possibleGrams = 0 }) => possibleGrams));
    if (density === undefined || displaced === undefined) return undefined;
    const moves = (possible / displaced) * density.valueGPerCm3;
    if (moves <= density.expandedGPerCm3) return undefined;
    return {
      severity: "warn",
      params: { possible_g: possible },
      remedies: [
        { code: "check.remedy.leave-it-longer" },
        { code: "check.remedy.take-again", offer: { do: "repeat", role: "wet" } },
      ],
    };
  },
};
