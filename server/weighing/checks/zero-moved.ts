import { massWords } from "../../checks/amounts.ts";
import { grams, meanGrams, scatterGrams } from "./situation.ts";
import { tareWhileImmersed } from "./tare-while-immersed.ts";
import type { Watch } from "./watch.ts";

/**
 * The empty hanger does not come back to its zero. Hung: beyond three times the repeatability something moved.
 * Beaker on the pan: a negative zero is expected, since the piece carries a film of water out (10 µm on a coin of
 * 39 mm is 28 mg) and water evaporates; only a larger loss, or any gain, is asked about. Common practice.
 */
export const zeroMoved: Watch = {
  kind: "zero-moved",
  look(situation) {
    const zeros = (situation.zeros ?? []).map(grams);
    if (zeros.length < 2 || situation.method === "flask" || tareWhileImmersed.look(situation))
      return undefined;
    const moved = zeros.at(-1)! - zeros[0]!;
    const scatter = 3 * scatterGrams(situation, "wet");
    const hung = situation.method === "hung";
    const loss = hung ? scatter : Math.max(scatter, 0.1, 0.03 * (meanGrams(situation.wet) ?? 0));
    if (moved <= scatter && -moved <= loss) return undefined;
    return {
      says: `The empty hanger read ${massWords(zeros[0]!)} before and ${massWords(zeros.at(-1)!)} after: moved by ${massWords(moved)}, more than ${massWords(moved > 0 ? scatter : loss)}.`,
      ask: hung
        ? "Was the table or the wire knocked, or does water or a bubble cling to the hanger?"
        : moved > 0
          ? "Did something fall into the beaker, or does the stand or the thread lean on the balance?"
          : "Was water splashed or carried out, or does a draught take it?",
      remedies: [
        {
          says: "Void this immersion with its reason and take zero, reading, zero again.",
          offer: { do: "repeat", role: "zero" },
        },
        { says: "Clean the wire with alcohol and always come to the mark from the same side." },
      ],
      blocking: hung,
    };
  },
};
