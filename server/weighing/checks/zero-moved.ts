import type { ProcedureCheck } from "./procedure-check.ts";
import { grams, hangs, meanGrams, scatterGrams } from "./situation.ts";
import { tareWhileImmersed } from "./tare-while-immersed.ts";

/**
 * The empty hanger does not come back to its zero. Hung: beyond three times the repeatability something moved.
 * Beaker on the pan: a negative zero is expected, since the piece carries a film of water out (10 µm on a coin of
 * 39 mm is 28 mg) and water evaporates; only a larger loss, or any gain, is asked about. Common practice.
 */
export const zeroMoved: ProcedureCheck = {
  code: "check.zero-moved",
  detect(situation) {
    const zeros = (situation.zeros ?? []).map(grams);
    if (zeros.length < 2 || tareWhileImmersed.detect(situation)) return undefined;
    const moved = zeros.at(-1)! - zeros[0]!;
    const scatter = 3 * scatterGrams(situation, "wet");
    const hung = hangs(situation);
    const loss = hung ? scatter : Math.max(scatter, 0.1, 0.03 * (meanGrams(situation.wet) ?? 0));
    if (moved <= scatter && -moved <= loss) return undefined;
    return {
      severity: hung ? "stop" : "warn",
      params: {
        before_g: zeros[0]!,
        after_g: zeros.at(-1)!,
        moved_g: moved,
        tolerable_g: moved > 0 ? scatter : loss,
        cause: hung ? "hung" : moved > 0 ? "gain" : "loss",
      },
      remedies: [
        { code: "check.remedy.zero-again", offer: { do: "repeat", role: "zero" } },
        { code: "check.remedy.clean-wire" },
      ],
    };
  },
};
