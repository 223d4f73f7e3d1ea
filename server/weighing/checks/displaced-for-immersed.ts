import { densityWords, massWords } from "../../checks/amounts.ts";
import { fitsClaim, isSolidMetal, roughDensity, soFar, solidMetal } from "./situation.ts";
import type { Watch } from "./watch.ts";

/**
 * The method's wet reading was taken for the other method's: a displaced mass entered as immersed reading, or the
 * other way round. Dry minus the entry then makes a metal where the entry itself makes none.
 */
export const displacedForImmersed: Watch = {
  kind: "displaced-for-immersed",
  look(situation) {
    const now = soFar(situation);
    if (now === undefined || situation.method === "flask") return undefined;
    const { dryGrams, displacedGrams, gPerCm3 } = now;
    const otherwise = roughDensity(dryGrams, dryGrams - displacedGrams);
    if (displacedGrams <= 0 || gPerCm3 >= solidMetal.low) return undefined;
    if (!isSolidMetal(otherwise) || !fitsClaim(situation, otherwise, 0.25)) return undefined;
    const hung = situation.method === "hung";
    const entered = massWords(hung ? dryGrams - displacedGrams : displacedGrams);
    return {
      says:
        `As entered, the piece would have ${densityWords(gPerCm3)}, lighter than any metal. If ${entered} is the ` +
        `${hung ? "displaced mass" : "reading of the piece hanging in water"}, it has about ${densityWords(otherwise)}.`,
      ask: hung
        ? "Does the water stand on the balance? Then the reading is the displaced mass."
        : "Does the piece hang from the balance? Then the reading is the immersed one.",
      remedies: [
        hung
          ? { says: "Record it as beaker on the pan.", offer: { do: "read-as-displaced" } }
          : { says: "Record it as hung from the balance.", offer: { do: "read-as-immersed" } },
        { says: "If the method is right, the piece rests on the bottom: lift it clear and read again." },
      ],
      blocking: true,
    };
  },
};
