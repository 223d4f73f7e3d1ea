import { densityWords, massWords } from "../../checks/amounts.ts";
import { climb } from "./climb.ts";
import { displacedInOrder, meanGrams, roughDensity, type Situation } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** Common practice: after five immersions that still rise, the run is stopped. */
const enough = 5;

/** Each immersion reads denser than the one before and no two agree yet: bubbles are leaving, or water goes in. */
export const stillClimbing: Watch = {
  kind: "still-climbing",
  look(situation) {
    const { runs, levelled, fellGrams } = climb(situation);
    if (runs !== "up" || levelled) return undefined;
    const many = situation.wet.length >= enough;
    return {
      says: `Still rising: ${densitiesInOrder(situation)}. The displaced mass fell by ${massWords(fellGrams)} over ${situation.wet.length} immersions, so there is no mean to state yet.`,
      ask: many
        ? "Five immersions and no two agree: is the piece porous, hollow or drinking water?"
        : "Do bubbles still leave the piece?",
      remedies: many
        ? [
            { says: "Stop the run. Dry the piece and weigh it dry: a gain means water inside." },
            { says: "Boil and cool the water, wet the piece in alcohol where it may be, and begin again." },
          ]
        : [
            { says: "Go on until two immersions agree.", offer: { do: "repeat", role: "wet" } },
            { says: "Brush the piece under water, hang it on edge, use a trace of wetting agent." },
          ],
      blocking: true,
    };
  },
};

/** The densities of the immersions, in order, for a sentence. */
export function densitiesInOrder(situation: Situation): string {
  const dry = meanGrams(situation.dry) ?? Number.NaN;
  return displacedInOrder(situation)
    .map((displaced) => densityWords(roughDensity(dry, displaced)).replace(" g/cm³", ""))
    .join(", ");
}
