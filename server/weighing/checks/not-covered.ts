import { densityWords, massWords } from "../../checks/amounts.ts";
import { nothingOnHook } from "./nothing-on-hook.ts";
import { scatterGrams, soFar, solidMetal } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** Denser than osmium: part of the piece stands out of the water, or part of the buoyancy went missing. */
export const notCovered: Watch = {
  kind: "not-covered",
  look(situation) {
    const now = soFar(situation);
    if (now === undefined || now.displacedGrams <= 0 || now.dryGrams <= 0) return undefined;
    // a coarse scale may miss the densest metals by its own scatter
    const most = now.displacedGrams + 2 * scatterGrams(situation, "wet");
    if ((now.dryGrams / most) * 0.9968 <= solidMetal.high || nothingOnHook.look(situation) !== undefined)
      return undefined;
    return {
      says:
        `Only ${massWords(now.displacedGrams)} displaced by ${massWords(now.dryGrams)}: about ` +
        `${densityWords(now.gPerCm3)}, denser than any metal there is.`,
      ask: "Is the piece covered everywhere, with a finger's breadth of water above it?",
      remedies: [
        {
          says: "Lower the piece until it is fully covered, hanger at its mark, and read again.",
          offer: { do: "repeat", role: "wet" },
        },
        {
          says: "The hanger may be in one reading and not in the other: zero it hanging empty in the water.",
        },
        {
          says: "With the beaker on the pan, evaporation and automatic zero both eat displaced mass: zero and read quickly.",
        },
      ],
      blocking: true,
    };
  },
};
