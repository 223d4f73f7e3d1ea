import type { CurvePoint } from "./density-result.ts";
import { quantileOf } from "./monte-carlo.ts";
import { studentDensity } from "./student.ts";

const points = 81;

/** Student's curve about a value, from −4u to +4u. */
export function studentCurve(value: number, u: number, dof: number): CurvePoint[] {
  return Array.from({ length: points }, (_, i) => {
    const t = (8 * i) / (points - 1) - 4;
    return { gPerCm3: value + t * u, probabilityDensity: studentDensity(t, dof) / u };
  });
}

/** Curve of sorted trials, divided by `scale`: the slope of their cumulative share over narrow windows. */
export function curveOf(sorted: Float64Array, scale: number): CurvePoint[] {
  const low = quantileOf(sorted, 0.0005);
  const high = quantileOf(sorted, 0.9995);
  const step = (high - low) / (points - 1);
  if (!(step > 0) || !Number.isFinite(step)) return [];
  const counts = new Float64Array(points);
  for (const x of sorted) {
    const i = Math.round((x - low) / step);
    if (i >= 0 && i < points) counts[i]! += 1;
  }
  // a little smoothing, so that the eye sees the law and not the draw
  return Array.from(counts, (c, i) => {
    const smooth = (counts[Math.max(0, i - 1)]! + 2 * c + counts[Math.min(points - 1, i + 1)]!) / 4;
    return {
      gPerCm3: (low + i * step) / scale,
      probabilityDensity: (smooth / (sorted.length * step)) * scale,
    };
  });
}
