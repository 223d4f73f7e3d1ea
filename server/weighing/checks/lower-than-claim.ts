import { densityWords, massWords } from "../../checks/amounts.ts";
import { outsideClaim } from "./claim-distance.ts";
import { soFar } from "./situation.ts";
import { isLowAndTight } from "./void-or-lighter.ts";
import type { Watch } from "./watch.ts";

/** Below the claim. Nearly every fault of the trade pushes the density down, so the procedure is asked first. */
export const lowerThanClaim: Watch = {
  kind: "lower-than-claim",
  look(situation) {
    const outside = outsideClaim(situation);
    const now = soFar(situation);
    const { claim } = situation;
    if (outside?.side !== "below" || now === undefined || claim === undefined) return undefined;
    if (isLowAndTight(situation)) return undefined;
    const bubble = now.displacedGrams * (1 - outside.gPerCm3 / claim.lowGPerCm3);
    const millimetres = Math.cbrt((bubble * 1000 * 6) / (Math.PI * 0.9968));
    return {
      says:
        `${densityWords(outside.gPerCm3)} is below ${claim.name} (${densityWords(claim.lowGPerCm3)} and up). ` +
        `${massWords(bubble)} too much displaced would explain it: one bubble of ${millimetres.toFixed(1)} mm.`,
      ask: "No bubbles, no touching, clean and solid, same depth as at the zero?",
      remedies: [
        {
          says: "Look from the side with a lamp, brush off bubbles, hang it free and read again.",
          offer: { do: "repeat", role: "wet" },
        },
        { says: "Grease, lacquer, stones, solder and hollows lower the density of a true piece." },
        { says: "If all that is ruled out, the metal itself is lighter than claimed." },
      ],
      blocking: false,
    };
  },
};
