import type { ProcedureCheck } from "./procedure-check.ts";
import { grams, meanGrams, scatterGrams } from "./situation.ts";

/**
 * The zero key was pressed while the piece was in the water: the live reading falls to nothing in one step, or the
 * empty hanger afterwards reads the immersed reading with the opposite sign.
 */
export const tareWhileImmersed: ProcedureCheck = {
  code: "check.tare-while-immersed",
  detect(situation) {
    const scatter = scatterGrams(situation, "wet");
    const wet = meanGrams(situation.wet);
    const live = (situation.live ?? []).map(grams);
    const stepped = live.findIndex(
      (after, place) =>
        place > 0 &&
        Math.abs(live[place - 1]!) > 20 * scatter &&
        Math.abs(after) <= 3 * scatter &&
        Math.abs(live[place + 1] ?? Number.POSITIVE_INFINITY) <= 3 * scatter,
    );
    const lastZero = situation.zeros?.at(-1);
    const zero = lastZero === undefined ? undefined : grams(lastZero);
    const opposite =
      zero !== undefined &&
      wet !== undefined &&
      Math.abs(wet) > 20 * scatter &&
      Math.abs(zero + wet) <= Math.max(5 * scatter, 0.02 * Math.abs(wet));
    if (stepped < 0 && !opposite) return undefined;
    return {
      severity: "stop",
      params: {
        case: opposite ? "opposite" : "stepped",
        from_g: opposite ? zero : live[stepped - 1]!,
        to_g: opposite ? wet : live[stepped]!,
      },
      remedies: [
        { code: "check.remedy.lift-and-zero", offer: { do: "repeat", role: "zero" } },
        { code: "check.remedy.fell-off" },
      ],
    };
  },
};
