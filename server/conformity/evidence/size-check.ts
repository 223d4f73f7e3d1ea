import type { Library } from "../../metals/library.ts";
import { type Comparison, compareWith, type MeasuredPiece } from "../../metals/specifications/comparison.ts";
import type { Specification } from "../../metals/specifications/specification.ts";
import type { Evidence } from "./evidence.ts";

/** A piece compared with its specification, and what its outline can hold when both dimensions were measured. */
export interface SizeCheck {
  specification: Specification;
  measured: MeasuredPiece;
  comparisons: Comparison[];
  /** the disc that holds the piece, as evidence against anything too light to fit it */
  outline?: Extract<Evidence, { kind: "outline" }>;
}

/** Compares mass and size; dimensions in mm with standard uncertainties, mass in g. */
export function checkSize(
  specification: Specification,
  measured: MeasuredPiece,
  library: Library,
): SizeCheck {
  const { massG, diameterMm, thicknessMm, uDiameterMm = 0, uThicknessMm = 0 } = measured;
  const comparisons = compareWith(specification, measured, library);
  if (diameterMm === undefined || thicknessMm === undefined) return { specification, measured, comparisons };
  const outlineCm3 = ((Math.PI / 4) * diameterMm ** 2 * thicknessMm) / 1000;
  const uOutlineCm3 = outlineCm3 * Math.hypot((2 * uDiameterMm) / diameterMm, uThicknessMm / thicknessMm);
  return {
    specification,
    measured,
    comparisons,
    outline: { kind: "outline", massG, outlineCm3, uOutlineCm3 },
  };
}
