import { measure } from "../../../calibration/measure.ts";
import type { Param } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { called } from "../../metals/called.ts";
import { builtIn, type Library } from "../../metals/library.ts";
import { type Evaluate, expectedResult, type PlannedWeighing } from "./planned-weighing.ts";

/** One mass on every scale. */
export interface PlanTableRow {
  massG: number;
  displacedG: number;
  /** half-width of the interval in per cent of the density, one for each scale; null where the scale cannot see it */
  percents: (number | null)[];
}

/** A table for the wall beside the owner's own scales. */
export interface PlanTable {
  claim: string;
  called: Param;
  method: PlannedWeighing["method"];
  readabilitiesG: readonly number[];
  rows: PlanTableRow[];
}

/** Wider than the density itself says nothing. */
const worstPercent = 100;

/**
 * Expected uncertainty of one determination for a metal, by mass and by scale, for printing. Masses and readabilities in
 * grams; `base` gives method, confidence, water. Refuses an unknown claim.
 */
export function planTable(
  base: Omit<PlannedWeighing, "massG" | "readabilityG">,
  massesG: readonly number[],
  readabilitiesG: readonly number[],
  evaluate: Evaluate = (m) => measure(m),
  library: Library = builtIn,
): PlanTable {
  const claimed = library.metal(base.claim);
  const { nominal } = claimed.densityGPerCm3;
  const percent = (massG: number, readabilityG: number): number | null => {
    try {
      const result = expectedResult({ ...base, massG, readabilityG }, nominal, evaluate);
      const percents = (100 * result.expandedGPerCm3) / result.gPerCm3;
      return percents < worstPercent ? percents : null;
    } catch (error) {
      if (error instanceof Refusal) return null;
      throw error;
    }
  };
  return {
    claim: claimed.id,
    called: called(claimed),
    method: base.method,
    readabilitiesG,
    rows: massesG.map((massG) => ({
      massG,
      displacedG: (massG * base.pieces) / nominal,
      percents: readabilitiesG.map((d) => percent(massG, d)),
    })),
  };
}
