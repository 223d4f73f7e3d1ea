import { isSolidMetal, type Situation, scatterGrams, soFar } from "./situation.ts";

/**
 * Where the density lies against the claim's band, g/cm³, or undefined when it may lie inside, nothing is claimed, or
 * the density is no metal's at all (other checks speak then).
 */
export function outsideClaim(
  situation: Situation,
): { side: "below" | "above"; gPerCm3: number; byGPerCm3: number } | undefined {
  const now = soFar(situation);
  const { claim, density } = situation;
  if (now === undefined || claim === undefined || now.displacedGrams <= 0) return undefined;
  const gPerCm3 = density?.valueGPerCm3 ?? now.gPerCm3;
  const roughly = 0.005 + (2 * scatterGrams(situation, "wet") * Math.SQRT2) / now.displacedGrams;
  const expanded = density?.expandedGPerCm3 ?? gPerCm3 * roughly;
  if (!isSolidMetal(gPerCm3)) return undefined;
  if (gPerCm3 + expanded < claim.lowGPerCm3)
    return { side: "below", gPerCm3, byGPerCm3: claim.lowGPerCm3 - gPerCm3 };
  if (gPerCm3 - expanded > claim.highGPerCm3)
    return { side: "above", gPerCm3, byGPerCm3: gPerCm3 - claim.highGPerCm3 };
  return undefined;
}
