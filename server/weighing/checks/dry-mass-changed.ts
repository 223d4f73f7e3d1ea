import type { ProcedureCheck } from "./procedure-check.ts";
import { meanGrams, scatterGrams } from "./situation.ts";

/** The dry mass after the immersion is not the dry mass before it. */
export const dryMassChanged: ProcedureCheck = {
  code: "check.dry-mass-changed",
  detect(situation) {
    const before = meanGrams(situation.dry);
    const after = meanGrams(situation.dryAfter);
    if (before === undefined || after === undefined) return undefined;
    const gained = after - before;
    const tolerable = 3 * Math.SQRT2 * scatterGrams(situation, "dry");
    if (Math.abs(gained) <= tolerable) return undefined;
    const foreign = Math.abs(gained) > 0.05 * before;
    return {
      severity: "stop",
      params: {
        before_g: before,
        after_g: after,
        change: gained > 0 ? "gained" : "lost",
        by_g: Math.abs(gained),
        tolerable_g: tolerable,
        cause: foreign ? "foreign" : gained > 0 ? "water" : "lost",
      },
      remedies: [
        ...(foreign ? [{ code: "check.remedy.compare-first" } as const] : []),
        {
          code: gained > 0 ? "check.remedy.dry-longer" : "check.remedy.look-in-beaker",
          offer: { do: "repeat", role: "dry" },
        },
        { code: "check.remedy.fills-up" },
      ],
    };
  },
};
