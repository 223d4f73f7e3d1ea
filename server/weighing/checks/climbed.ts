import { massWords } from "../../checks/amounts.ts";
import { climb } from "./climb.ts";
import { densitiesInOrder } from "./still-climbing.ts";
import type { Watch } from "./watch.ts";

/** The repeats climbed and then levelled off: the early ones held bubbles and pull the mean down. */
export const climbed: Watch = {
  kind: "climbed",
  look(situation) {
    const { runs, levelled, fellGrams, early } = climb(situation);
    if (runs !== "up" || !levelled || early.length === 0) return undefined;
    return {
      says: `The immersions climbed and levelled off: ${densitiesInOrder(situation)}. The first held about ${massWords(fellGrams)} of bubbles.`,
      ask: "Set the early, bubbly immersions aside?",
      remedies: [
        {
          says: "Set them aside with the reason “bubbles leaving”; they stay in the record.",
          offer: { do: "set-aside", role: "wet", places: early },
        },
        { says: "If the piece is hollow or porous, dry it and weigh it again: a gain means water went in." },
      ],
      blocking: false,
    };
  },
};
