import type { Locale } from "../messages/language.ts";
import type { Band } from "./bands.tsx";
import type { CurvePoint } from "./curve.ts";

/** What was measured, as the plot needs it. All densities in g/cm³. */
export interface MeasuredCurve {
  value: number;
  /** standard uncertainty, above 0 */
  u: number;
  interval: readonly [number, number];
  /** coverage probability, such as 0.9545 */
  confidence: number;
  /** the distribution from left to right; see curveOf */
  curve: readonly CurvePoint[];
}

export interface DensityPlot {
  id: string;
  caption?: string;
  measured?: MeasuredCurve;
  bands: readonly Band[];
  /** id of the band that the piece is said to be */
  claimId?: string;
  /** part of the axis to show; found from the data when left out */
  domain?: readonly [number, number];
  locale?: Locale;
}
