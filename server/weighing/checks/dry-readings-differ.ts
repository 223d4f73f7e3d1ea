import { massWords } from "../../checks/amounts.ts";
import { grams, scatterGrams } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** Dry repeats further apart than the balance can scatter: another piece, a wet one, or fingers on it. */
export const dryReadingsDiffer: Watch = {
  kind: "dry-readings-differ",
  look(situation) {
    const masses = situation.dry.map(grams);
    if (masses.length < 2) return undefined;
    const span = Math.max(...masses) - Math.min(...masses);
    // the span of a few readings of one mass stays below about 4.5 σ (studentised range, 5 readings, 1 %)
    const tolerable = 4.5 * scatterGrams(situation, "dry");
    if (span <= tolerable) return undefined;
    return {
      says: `The dry readings lie ${massWords(span)} apart; this balance scatters by at most ${massWords(tolerable)}.`,
      ask: "Was it the same piece each time, dry, and alone on the pan?",
      remedies: [
        {
          says: "Dry the piece, let the balance return to zero and weigh it again.",
          offer: { do: "repeat", role: "dry" },
        },
        { says: "Draughts and static wander too: close the shield and lay the piece in a metal dish." },
      ],
      blocking: true,
    };
  },
};
