import { massWords } from "../../checks/amounts.ts";
import { scatterGrams, soFar } from "./situation.ts";
import type { Watch } from "./watch.ts";

/**
 * Hung: an immersed reading of about nothing, so a density of 1.0. Displaced: a rise of about nothing, less than any
 * solid would make. Either way the balance does not carry the piece.
 */
export const nothingOnHook: Watch = {
  kind: "nothing-on-hook",
  look(situation) {
    const now = soFar(situation);
    if (now === undefined || situation.method === "flask" || now.dryGrams <= 0) return undefined;
    const { dryGrams, displacedGrams } = now;
    const hung = situation.method === "hung";
    const wetGrams = hung ? dryGrams - displacedGrams : displacedGrams;
    // a solid of osmium still displaces dry/22.7; half of that is nothing, but so is anything within the scatter
    const nothing = Math.max(3 * scatterGrams(situation, "wet"), hung ? 0.02 * dryGrams : dryGrams / 45);
    if (Math.abs(wetGrams) > nothing) return undefined;
    if (!hung && dryGrams / 19 < nothing / 1.5) return undefined; // scale too coarse to tell nothing from gold
    return {
      says: hung
        ? `The immersed reading is ${massWords(wetGrams)}, so the density would be that of water: reads like an empty hook.`
        : `The beaker rose by ${massWords(wetGrams)}; the densest metal of ${massWords(dryGrams)} would make ${massWords(dryGrams / 22.7)}.`,
      ask: hung
        ? "Does the piece hang free, or has it fallen off and lies on the bottom?"
        : "Is the piece in the water, and does the scale follow slow small loads?",
      remedies: [
        {
          says: "Hang the piece again, clear of wall and bottom, and read.",
          offer: { do: "repeat", role: "wet" },
        },
        ...(hung
          ? []
          : [
              {
                says: "Some scales swallow slow small changes near zero: leave a 20 g weight on the pan, zero, and lower the piece briskly.",
              },
            ]),
      ],
      blocking: true,
    };
  },
};
