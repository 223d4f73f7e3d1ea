import { densityWords, massWords } from "../../checks/amounts.ts";
import { outsideClaim } from "./claim-distance.ts";
import { soFar } from "./situation.ts";
import type { Watch } from "./watch.ts";

/** Above the claim: few innocent causes, so they can all be named. */
export const higherThanClaim: Watch = {
  kind: "higher-than-claim",
  look(situation) {
    const outside = outsideClaim(situation);
    const now = soFar(situation);
    const { claim } = situation;
    if (outside?.side !== "above" || now === undefined || claim === undefined) return undefined;
    const missing = now.displacedGrams * (outside.gPerCm3 / claim.highGPerCm3 - 1);
    const tooHeavy = now.dryGrams * (1 - claim.highGPerCm3 / outside.gPerCm3);
    return {
      says:
        `${densityWords(outside.gPerCm3)} is above ${claim.name} (up to ${densityWords(claim.highGPerCm3)}). ` +
        `${massWords(missing)} too little displaced, or ${massWords(tooHeavy)} too much in the dry reading, would explain it.`,
      ask: "Fully covered, bare piece in the dry reading, dry when weighed, hanger zeroed at the same depth?",
      remedies: [
        {
          says: "Cover the piece by a finger's breadth and read again.",
          offer: { do: "repeat", role: "wet" },
        },
        { says: "Weigh the bare piece, dry and without hanger.", offer: { do: "repeat", role: "dry" } },
        ...(situation.method === "displaced"
          ? [{ says: "Evaporation and automatic zero eat displaced mass: zero again and read quickly." }]
          : []),
        { says: "If all that is ruled out, the piece holds something denser than claimed." },
      ],
      blocking: false,
    };
  },
};
