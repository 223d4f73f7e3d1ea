import type { Locale } from "../messages/language.ts";
import type { Band } from "./bands.tsx";
import type { CurvePoint } from "./curve.ts";

/** A measured density as it is drawn, g/cm³. */
export interface MeasuredCurve {
  value: number;
  /** standard uncertainty */
  u: number;
  /** coverage interval, and its probability 0 to 1 */
  interval: readonly [number, number];
  confidence: number;
  /** the distribution from left to right; see curveOf */
  curve: readonly CurvePoint[];
}

/** What a density axis shows. Before the answer: bands as outlines and the expected width; after it: curve and filled bands. */
export interface DensityPlot {
  id: string;
  caption?: string;
  measured?: MeasuredCurve;
  /** where the density is expected and how wide its interval will be, before anything is measured, g/cm³ */
  expected?: { value: number; halfWidth: number };
  bands: readonly Band[];
  /** id of the band that the piece is said to be */
  claimId?: string;
  /** part of the axis to show; found from the data when left out */
  domain?: readonly [number, number];
  /** rows of bands drawn at once; the table has them all */
  mostRows?: number;
  /** true where the words around it name the plot already */
  captionUnseen?: boolean;
  locale?: Locale;
}
