import { massWords } from "../../checks/amounts.ts";
import { boxesSwapped } from "./boxes-swapped.ts";
import { scatterGrams, soFar } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** Nothing, or less than nothing, was displaced, and changing the boxes over does not explain it. */
export const displacementNegative: Watch = {
  kind: "displacement-negative",
  look(situation) {
    const now = soFar(situation);
    if (now === undefined || now.displacedGrams > scatterGrams(situation, "wet")) return undefined;
    if (now.dryGrams <= 0 || boxesSwapped.look(situation) !== undefined) return undefined;
    if (
      situation.method === "displaced" &&
      Math.abs(now.displacedGrams) <= 3 * scatterGrams(situation, "wet")
    )
      return undefined; // a rise of nothing: the piece is not in the water
    return {
      says: `The displaced mass comes out as ${massWords(now.displacedGrams)}: in water every piece loses some weight.`,
      ask: {
        hung: "Was the piece under water, and was the empty hanger tared in the water before?",
        displaced:
          "Was the balance zeroed with the beaker and the empty hanger in place, before the piece went in?",
        flask: "Was the flask topped up to the mark, and weighed full of water alone in the same way?",
      }[situation.method],
      remedies: [
        {
          says: "Take the zero again with the empty hanger in the water at its mark.",
          offer: { do: "repeat", role: "zero" },
        },
        { says: "Immerse the piece fully and read again.", offer: { do: "repeat", role: "wet" } },
      ],
      blocking: true,
    };
  },
};
