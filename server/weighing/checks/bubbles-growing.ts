import { massWords } from "../../checks/amounts.ts";
import { climb } from "./climb.ts";
import { densitiesInOrder } from "./still-climbing.ts";
import type { Watch } from "./watch.ts";

/** Each immersion reads lighter than the one before: fresh cold water gives off its air onto the piece. */
export const bubblesGrowing: Watch = {
  kind: "bubbles-growing",
  look(situation) {
    const { runs, fellGrams } = climb(situation);
    if (runs !== "down") return undefined;
    return {
      says: `The density falls immersion by immersion: ${densitiesInOrder(situation)}; the displaced mass grew by ${massWords(-fellGrams)}.`,
      ask: "Is the water fresh from the tap, so that bubbles grow on piece and hanger? Does the string drink?",
      remedies: [
        { says: "Boil the water for five minutes, let it cool covered, and begin again with it." },
        { says: "Brush the bubbles off under water and read at once.", offer: { do: "repeat", role: "wet" } },
        { says: "Hang the piece on thin wire instead of string." },
      ],
      blocking: false,
    };
  },
};
