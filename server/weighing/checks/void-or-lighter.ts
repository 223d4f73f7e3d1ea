import { densityWords } from "../../checks/amounts.ts";
import { outsideClaim } from "./claim-distance.ts";
import { climb } from "./climb.ts";
import { dryMassChanged } from "./dry-mass-changed.ts";
import { displacedInOrder, type Situation, scatterGrams } from "./situation.ts";
import type { Watch } from "./watch.ts";

/**
 * Low, and every way in which the procedure lowers a density has left no trace: the immersions agree, so nothing filled
 * and no bubble left, and the piece dried to the mass it had, so it drank nothing. What is left is inside the piece.
 */
export function isLowAndTight(situation: Situation): boolean {
  const { dryAfter = [] } = situation;
  const displaced = displacedInOrder(situation);
  if (outsideClaim(situation)?.side !== "below" || dryAfter.length === 0 || displaced.length < 2)
    return false;
  if (dryMassChanged.look(situation) !== undefined || climb(situation).runs !== "neither") return false;
  const spread = Math.max(...displaced) - Math.min(...displaced);
  return spread <= 3 * Math.SQRT2 * scatterGrams(situation, "wet");
}

/** A closed void or a lighter alloy: one sentence that joins what three readings say. */
export const voidOrLighter: Watch = {
  kind: "void-or-lighter",
  look(situation) {
    const outside = outsideClaim(situation);
    const { claim } = situation;
    if (outside === undefined || claim === undefined || !isLowAndTight(situation)) return undefined;
    const share = 100 * (1 - outside.gPerCm3 / claim.lowGPerCm3);
    return {
      says:
        `${densityWords(outside.gPerCm3)} is below ${claim.name} (${densityWords(claim.lowGPerCm3)} and up), the immersions agree and the piece dried to the mass it had: ` +
        `a closed void of ${share.toFixed(1)} % or more, or a lighter alloy. Density cannot tell which.`,
      ask: "Is there a shrink cavity, a core or another alloy inside?",
      remedies: [
        { says: "Ultrasound through the piece finds a void or a core without harm." },
        { says: "A drilled sample decides, with the owner's consent; a licensed laboratory takes it." },
      ],
      blocking: false,
    };
  },
};
