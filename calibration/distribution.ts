import { lawAt, lawQuantile } from "./density-law.ts";
import type { DensityResult } from "./density-result.ts";
import type { MeasuredDensity } from "./measured-density.ts";
import { studentBelow, studentDensity, studentQuantile } from "./student.ts";

/** A point of the density's distribution, for a plot. */
export interface CurvePoint {
  gPerCm3: number;
  /** probability per g/cm³ */
  probabilityDensity: number;
}

/** Probability that the true density lies below x, g/cm³, and its slope there, per g/cm³. */
function at({ law }: DensityResult, x: number): readonly [number, number] {
  if (law.kind === "trials") {
    const [below, slope] = lawAt(law.trials, x * 1000);
    return [below, slope * 1000];
  }
  const t = (x - law.gPerCm3) / law.uGPerCm3;
  return [studentBelow(t, law.dof), studentDensity(t, law.dof) / law.uGPerCm3];
}

/** The density below which the true one lies with probability p (0 < p < 1), g/cm³, from the quoted evaluation. */
export function densityQuantile({ law, gPerCm3 }: DensityResult, p: number): number {
  if (law.kind === "trials") return lawQuantile(law.trials, p, gPerCm3 * 1000) / 1000;
  return law.gPerCm3 + studentQuantile(p, law.dof) * law.uGPerCm3;
}

/** The distribution as a curve of `points` points over all but a ten-thousandth at either side. */
export function densityCurve(result: DensityResult, points = 81): CurvePoint[] {
  const low = densityQuantile(result, 1e-4);
  const high = densityQuantile(result, 1 - 1e-4);
  // a distribution without a far end is drawn to twice its interval
  const to = Number.isFinite(high) ? high : 2 * result.intervalGPerCm3[1];
  return Array.from({ length: points }, (_, i) => {
    const gPerCm3 = low + ((to - low) * i) / (points - 1);
    return { gPerCm3, probabilityDensity: at(result, gPerCm3)[1] };
  });
}

/** Less than this on either side is not told apart from nothing. */
const nothing = 1e-7;

/** The result as a finding needs it. Probabilities below 1e-7 come back as 0, above 1 − 1e-7 as 1. */
export function measuredDensity(result: DensityResult): MeasuredDensity {
  let ends: readonly [number, number] | undefined;
  return {
    valueGPerCm3: result.gPerCm3,
    uGPerCm3: result.uGPerCm3,
    intervalGPerCm3: result.intervalGPerCm3,
    confidence: result.confidence,
    intervalFrom: result.intervalFrom,
    probabilityBelow: (xGPerCm3) => {
      ends ??= [densityQuantile(result, nothing), densityQuantile(result, 1 - nothing)];
      if (xGPerCm3 <= ends[0]) return 0;
      if (xGPerCm3 >= ends[1]) return 1;
      return at(result, xGPerCm3)[0];
    },
  };
}
