import type { DensityResult } from "./density-result.ts";
import { readTable, tableQuantile } from "./density-table.ts";
import type { MeasuredDensity } from "./measured-density.ts";
import { studentBelow, studentDensity, studentQuantile } from "./student.ts";

/** A point of the density's distribution, for a plot. */
export interface CurvePoint {
  gPerCm3: number;
  /** probability per g/cm³ */
  probabilityDensity: number;
}

/** Probability that the true density lies below x, g/cm³, and its slope there, per g/cm³. */
function at({ distribution }: DensityResult, x: number): readonly [number, number] {
  if (distribution.kind === "trials") return readTable(distribution.table, x);
  const t = (x - distribution.gPerCm3) / distribution.uGPerCm3;
  return [studentBelow(t, distribution.dof), studentDensity(t, distribution.dof) / distribution.uGPerCm3];
}

/** The density below which the true one lies with probability p (0 < p < 1), g/cm³, from the quoted evaluation. */
export function densityQuantile({ distribution }: DensityResult, p: number): number {
  if (distribution.kind === "trials") return tableQuantile(distribution.table, p);
  return distribution.gPerCm3 + studentQuantile(p, distribution.dof) * distribution.uGPerCm3;
}

/** The distribution as a curve of `points` points over all but a thousandth at either side. */
export function densityCurve(result: DensityResult, points = 81): CurvePoint[] {
  const low = densityQuantile(result, 1e-3);
  const high = densityQuantile(result, 1 - 1e-3);
  return Array.from({ length: points }, (_, i) => {
    const gPerCm3 = low + ((high - low) * i) / (points - 1);
    return { gPerCm3, probabilityDensity: at(result, gPerCm3)[1] };
  });
}

/** The result as a finding needs it: value, interval and the distribution the interval comes from. */
export function measuredDensity(result: DensityResult): MeasuredDensity {
  return {
    valueGPerCm3: result.gPerCm3,
    uGPerCm3: result.uGPerCm3,
    intervalGPerCm3: result.intervalGPerCm3,
    confidence: result.confidence,
    intervalFrom: result.intervalFrom,
    probabilityBelow: (xGPerCm3) => at(result, xGPerCm3)[0],
  };
}
