import { outsideClaim } from "./claim-distance.ts";
import type { ProcedureCheck } from "./procedure-check.ts";
import { soFar } from "./situation.ts";
import { isLowAndTight } from "./void-or-lighter.ts";

/** A bubble above this lets go of the piece, mm; and one that lifts this share of the displaced mass is seen (common practice). */
const largestBubble = 5;
const mostOfBubbles = 0.2;

/** Below the claim. Nearly every fault of the trade pushes the density down, so the procedure is asked first. */
export const lowerThanClaim: ProcedureCheck = {
  code: "check.lower-than-claim",
  detect(situation) {
    const outside = outsideClaim(situation);
    const now = soFar(situation);
    const { claim } = situation;
    if (outside?.side !== "below" || now === undefined || claim === undefined) return undefined;
    if (isLowAndTight(situation)) return undefined;
    const bubble = now.displacedGrams * (1 - outside.gPerCm3 / claim.lowGPerCm3);
    const unseen = now.displacedGrams * mostOfBubbles;
    const millimetres = Math.cbrt((bubble * 1000 * 6) / (Math.PI * 0.9968));
    return {
      severity: "warn",
      params: {
        density_g_cm3: outside.gPerCm3,
        claim: claim.metal,
        low_g_cm3: claim.lowGPerCm3,
        extra_g: bubble,
        bubble_mm: millimetres,
        bubble: millimetres <= largestBubble && bubble <= unseen ? "yes" : "no",
      },
      remedies: [
        { code: "check.remedy.lamp-and-brush", offer: { do: "repeat", role: "wet" } },
        { code: "check.remedy.what-lowers" },
        { code: "check.remedy.lighter-inside" },
      ],
    };
  },
};
