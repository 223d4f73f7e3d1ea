import { outsideClaim } from "./claim-distance.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { rises, soFar } from "./situation.ts";

/** Above the claim: few innocent causes, so they can all be named. */
export const higherThanClaim: ProcedureCheck = {
  code: "check.higher-than-claim",
  detect(situation) {
    const outside = outsideClaim(situation);
    const now = soFar(situation);
    const { claim } = situation;
    if (outside?.side !== "above" || now === undefined || claim === undefined) return undefined;
    const missing = now.displacedGrams * (outside.gPerCm3 / claim.highGPerCm3 - 1);
    const tooHeavy = now.dryGrams * (1 - claim.highGPerCm3 / outside.gPerCm3);
    return {
      severity: "warn",
      params: {
        density_g_cm3: outside.gPerCm3,
        claim: claim.metal,
        high_g_cm3: claim.highGPerCm3,
        missing_g: missing,
        heavy_g: tooHeavy,
      },
      remedies: [
        { code: "check.remedy.cover", offer: { do: "repeat", role: "wet" } },
        { code: "check.remedy.bare-dry", offer: { do: "repeat", role: "dry" } },
        ...(rises(situation) ? [{ code: "check.remedy.evaporation" } as const] : []),
        { code: "check.remedy.denser-inside" },
      ],
    };
  },
};
