import { densityWords, massWords } from "../../checks/amounts.ts";
import { fitsClaim, roughDensity, soFar } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** The hanger's mass sits in the dry reading: without it the density falls into the claim's band. */
export const hangerInDry: Watch = {
  kind: "hanger-in-dry",
  look(situation) {
    const now = soFar(situation);
    const { hangerGrams, claim, method } = situation;
    if (now === undefined || hangerGrams === undefined || claim === undefined || method === "flask")
      return undefined;
    const { dryGrams, displacedGrams, gPerCm3 } = now;
    if (fitsClaim(situation, gPerCm3, 0.005) || hangerGrams >= dryGrams) return undefined;
    const both = roughDensity(dryGrams - hangerGrams, displacedGrams);
    const dryOnly = roughDensity(dryGrams - hangerGrams, displacedGrams - hangerGrams);
    const inBoth = fitsClaim(situation, both, 0.005);
    const inDryOnly =
      method === "hung" && displacedGrams > hangerGrams && fitsClaim(situation, dryOnly, 0.005);
    if (!inBoth && !inDryOnly) return undefined;
    return {
      says:
        `As weighed: ${densityWords(gPerCm3)}, not ${claim.name}. With the hanger (${massWords(hangerGrams)}) taken out of ` +
        `the dry reading it would be ${densityWords(inBoth ? both : dryOnly)}, which is.`,
      ask: "Was the hanger on the pan, or the string on the piece, in the dry reading?",
      remedies: [
        {
          says: "Weigh the bare piece dry; the hanger belongs only to the zero in the water.",
          offer: { do: "repeat", role: "dry" },
        },
      ],
      blocking: false,
    };
  },
};
