import { densityWords, massWords } from "../checks/amounts.ts";
import { boxesSwapped } from "./boxes-swapped.ts";
import { fitsClaim, roughDensity, soFar } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** The hanger was not tared before the immersed reading: with it taken out, a claim or at least a metal appears. */
export const hangerInImmersed: Watch = {
  kind: "hanger-in-immersed",
  look(situation) {
    const now = soFar(situation);
    const { hangerGrams, method } = situation;
    if (now === undefined || hangerGrams === undefined || method !== "hung") return undefined;
    const { dryGrams, displacedGrams, gPerCm3 } = now;
    if (displacedGrams > 0 && fitsClaim(situation, gPerCm3, 0.005)) return undefined;
    const without = roughDensity(dryGrams, displacedGrams + hangerGrams);
    if (displacedGrams + hangerGrams <= 0 || !fitsClaim(situation, without, 0.005)) return undefined;
    if (situation.claim === undefined && boxesSwapped.look(situation) !== undefined) return undefined;
    return {
      says:
        `The immersed reading, ${massWords(dryGrams - displacedGrams)}, seems to hold the hanger: without its ` +
        `${massWords(hangerGrams)} the density would be about ${densityWords(without)}.`,
      ask: "Was the balance zeroed with the empty hanger hanging in the water at its mark?",
      remedies: [
        {
          says: "Hang the empty hanger in the water at its mark, zero, then immerse the piece again.",
          offer: { do: "repeat", role: "zero" },
        },
      ],
      blocking: true,
    };
  },
};
