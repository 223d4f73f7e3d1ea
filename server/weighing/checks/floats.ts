import { densityWords, massWords } from "../../checks/amounts.ts";
import { scatterGrams, soFar, solidMetal } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** The piece displaces more than it weighs: it floats and is held under, or it is hollow. */
export const floats: Watch = {
  kind: "floats",
  look(situation) {
    const now = soFar(situation);
    if (now === undefined || now.dryGrams <= 0) return undefined;
    const { dryGrams, displacedGrams, gPerCm3 } = now;
    const over = displacedGrams - dryGrams;
    // a sinker that was weighed in holds it under: that is how such a piece is measured
    if (situation.method === "hung" && (situation.hangerGrams ?? 0) > over) return undefined;
    const swapped = situation.method === "displaced" && displacedGrams / dryGrams >= solidMetal.low;
    if (over <= Math.max(3 * scatterGrams(situation, "wet"), 0.02 * dryGrams) || swapped) return undefined;
    return {
      says:
        `The piece weighs ${massWords(dryGrams)} and displaces ${massWords(displacedGrams)}: about ` +
        `${densityWords(gPerCm3)}, lighter than water.`,
      ask: "Does it float, or is it hollow, filled or holding air?",
      remedies: [
        { says: "A hollow or filled piece: density says nothing about its metal. Set it aside." },
        {
          says: "To measure it all the same, hang a sinker below it: weigh the sinker alone in the water, state that as the hanger's own reading, then weigh both together.",
        },
        {
          says: "If it sinks: the zero was lost. Zero the empty hanger in the water and read again.",
          offer: { do: "repeat", role: "zero" },
        },
      ],
      blocking: true,
    };
  },
};
