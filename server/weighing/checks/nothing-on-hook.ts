import type { ProcedureCheck } from "./procedure-check.ts";
import { hangs, scatterGrams, soFar } from "./situation.ts";

/**
 * Hung: an immersed reading of about nothing, so a density of 1.0. Displaced: a rise of about nothing, less than any
 * solid would make. Either way the balance does not carry the piece.
 */
export const nothingOnHook: ProcedureCheck = {
  code: "check.nothing-on-hook",
  detect(situation) {
    const now = soFar(situation);
    if (now === undefined || now.dryGrams <= 0) return undefined;
    const { dryGrams, displacedGrams } = now;
    const hung = hangs(situation);
    const wetGrams = hung ? dryGrams - displacedGrams : displacedGrams;
    // a solid of osmium still displaces dry/22.7; half of that is nothing, but so is anything within the scatter
    const nothing = Math.max(3 * scatterGrams(situation, "wet"), hung ? 0.02 * dryGrams : dryGrams / 45);
    // below zero a hung piece is lifted: it floats
    const least = hung ? -3 * scatterGrams(situation, "wet") : -nothing;
    if (wetGrams > nothing || wetGrams < least) return undefined;
    if (!hung && dryGrams / 19 < nothing / 1.5) return undefined; // scale too coarse to tell nothing from gold
    return {
      severity: "stop",
      params: { method: situation.method, wet_g: wetGrams, dry_g: dryGrams, least_g: dryGrams / 22.7 },
      remedies: [
        { code: "check.remedy.hang-again", offer: { do: "repeat", role: "wet" } },
        ...(hung ? [] : [{ code: "check.remedy.leave-weight" } as const]),
      ],
    };
  },
};
