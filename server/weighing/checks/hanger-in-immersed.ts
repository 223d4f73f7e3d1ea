import { densityWords, massWords } from "../../checks/amounts.ts";
import { fitsClaim, meanGrams, roughDensity, soFar } from "./situation.ts";
import type { Watch } from "./watch.ts";

/**
 * A hanger was stated as weighed in, but the immersed reading does not hold it: taken as it stands, a claim or at least
 * a metal appears, and less the hanger none does.
 */
export const hangerInImmersed: Watch = {
  kind: "hanger-in-immersed",
  look(situation) {
    const now = soFar(situation);
    const { hangerGrams, method } = situation;
    const wetGrams = meanGrams(situation.wet);
    if (now === undefined || hangerGrams === undefined || wetGrams === undefined || method !== "hung")
      return undefined;
    const { dryGrams, displacedGrams, gPerCm3 } = now;
    if (displacedGrams > 0 && fitsClaim(situation, gPerCm3, 0.005)) return undefined;
    const asRead = dryGrams - wetGrams;
    const otherwise = roughDensity(dryGrams, asRead);
    if (asRead <= 0 || !fitsClaim(situation, otherwise, 0.005)) return undefined;
    return {
      says:
        `The immersed reading, ${massWords(wetGrams)}, seems not to hold the hanger: with the stated ${massWords(hangerGrams)} ` +
        `left in it the density would be about ${densityWords(otherwise)}.`,
      ask: "Was the balance zeroed with the empty hanger hanging in the water at its mark?",
      remedies: [
        { says: "If so, take the hanger's reading out of what was stated: the zero has taken it off." },
        {
          says: "Hang the empty hanger in the water at its mark, zero, then immerse the piece again.",
          offer: { do: "repeat", role: "zero" },
        },
      ],
      blocking: true,
    };
  },
};
