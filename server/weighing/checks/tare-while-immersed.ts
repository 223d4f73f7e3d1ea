import { massWords } from "../../checks/amounts.ts";
import { grams, meanGrams, scatterGrams } from "./situation.ts";
import type { Watch } from "./watch.ts";

/**
 * The zero key was pressed while the piece was in the water: the live reading falls to nothing in one step, or the
 * empty hanger afterwards reads the immersed reading with the opposite sign.
 */
export const tareWhileImmersed: Watch = {
  kind: "tare-while-immersed",
  look(situation) {
    if (situation.method === "flask") return undefined;
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
      says: opposite
        ? `After the immersion the empty hanger reads ${massWords(zero)}, the immersed reading with its sign turned: the zero moved while the piece was in the water.`
        : `The live reading went from ${massWords(live[stepped - 1]!)} to ${massWords(live[stepped]!)} in one step while the piece was in the water.`,
      ask: "Was the zero or tare key pressed during the immersion?",
      remedies: [
        {
          says: "Lift the piece out, zero the empty hanger in the water, and immerse again.",
          offer: { do: "repeat", role: "zero" },
        },
        { says: "If the piece was lifted out or fell off at that moment, hang it again." },
      ],
      blocking: true,
    };
  },
};
