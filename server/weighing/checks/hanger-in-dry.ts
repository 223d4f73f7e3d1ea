import type { ProcedureCheck } from "./procedure-check.ts";
import { fitsClaim, hangs, roughDensity, soFar } from "./situation.ts";

/** The hanger's mass sits in the dry reading: without it the density falls into the claim's band. */
export const hangerInDry: ProcedureCheck = {
  code: "check.hanger-in-dry",
  detect(situation) {
    const now = soFar(situation);
    const { hangerGrams, claim } = situation;
    if (now === undefined || hangerGrams === undefined || claim === undefined) return undefined;
    const { dryGrams, displacedGrams, gPerCm3 } = now;
    if (fitsClaim(situation, gPerCm3, 0.005) || hangerGrams >= dryGrams) return undefined;
    const both = roughDensity(dryGrams - hangerGrams, displacedGrams, situation.liquidGPerCm3);
    const dryOnly = roughDensity(
      dryGrams - hangerGrams,
      displacedGrams - hangerGrams,
      situation.liquidGPerCm3,
    );
    const inBoth = fitsClaim(situation, both, 0.005);
    const inDryOnly =
      hangs(situation) && displacedGrams > hangerGrams && fitsClaim(situation, dryOnly, 0.005);
    if (!inBoth && !inDryOnly) return undefined;
    return {
      severity: "warn",
      params: {
        density_g_cm3: gPerCm3,
        claim: claim.metal,
        hanger_g: hangerGrams,
        otherwise_g_cm3: inBoth ? both : dryOnly,
      },
      remedies: [{ code: "check.remedy.bare-piece", offer: { do: "repeat", role: "dry", instead: true } }],
    };
  },
};
