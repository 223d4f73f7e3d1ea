import { massWords } from "../../checks/amounts.ts";
import { meanGrams, scatterGrams } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** The dry mass after the immersion is not the dry mass before it. */
export const dryMassChanged: Watch = {
  kind: "dry-mass-changed",
  look(situation) {
    const before = meanGrams(situation.dry);
    const after = meanGrams(situation.dryAfter);
    if (before === undefined || after === undefined) return undefined;
    const gained = after - before;
    const tolerable = 3 * Math.SQRT2 * scatterGrams(situation, "dry");
    if (Math.abs(gained) <= tolerable) return undefined;
    const foreign = Math.abs(gained) > 0.05 * before;
    return {
      says: `Dry before ${massWords(before)}, dry after ${massWords(after)}: ${gained > 0 ? "gained" : "lost"} ${massWords(Math.abs(gained))}, more than the ${massWords(tolerable)} this balance can scatter.`,
      ask: foreign
        ? "Is this the same piece?"
        : gained > 0
          ? "Is there water inside or still on the piece?"
          : "Was it wet at the first dry weighing, or did dirt, a stone or a part come off?",
      remedies: [
        ...(foreign
          ? [{ says: "Compare the piece with its ticket and photograph before anything else." }]
          : []),
        gained > 0
          ? {
              says: "Dry it longer in warm air and weigh again; water that stays has filled pores or a hollow.",
              offer: { do: "repeat", role: "dry" } as const,
            }
          : {
              says: "Weigh it dry again and look into the beaker for what is missing.",
              offer: { do: "repeat", role: "dry" } as const,
            },
        {
          says: "A porous or hollow piece reads too dense as it fills: the density is no evidence of its metal.",
        },
      ],
      blocking: true,
    };
  },
};
