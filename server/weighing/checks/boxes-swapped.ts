import { densityWords, massWords } from "../../checks/amounts.ts";
import { isSolidMetal, roughDensity, soFar } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** Dry and wet readings in each other's boxes: changed over, they make a metal; as they stand, they make nothing. */
export const boxesSwapped: Watch = {
  kind: "boxes-swapped",
  look(situation) {
    const now = soFar(situation);
    if (now === undefined || situation.method === "flask") return undefined;
    const { dryGrams, displacedGrams } = now;
    const hung = situation.method === "hung";
    const wetGrams = hung ? dryGrams - displacedGrams : displacedGrams;
    if (wetGrams <= dryGrams || dryGrams <= 0) return undefined;
    const changed = roughDensity(wetGrams, hung ? -displacedGrams : dryGrams);
    if (!isSolidMetal(changed)) return undefined;
    return {
      says:
        `Dry ${massWords(dryGrams)} is less than the ${hung ? "immersed reading" : "rise"}, ${massWords(wetGrams)}. ` +
        `Changed over, they give about ${densityWords(changed)}.`,
      ask: `Are the two readings in each other's boxes?`,
      remedies: [
        { says: "Change them over; the readings stay as first entered.", offer: { do: "swap-dry-and-wet" } },
        hung
          ? { says: "If not: the hanger was probably not tared. Zero it hanging empty in the water." }
          : {
              says: "If not: the balance was not zeroed with the beaker on the pan. Zero it and lower the piece again.",
            },
      ],
      blocking: true,
    };
  },
};
