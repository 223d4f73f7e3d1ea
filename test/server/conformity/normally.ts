import type { MeasuredDensity } from "../../../calibration/measured-density.ts";
import { normalBelow } from "../../../calibration/normal.ts";

/** A measured density with a normal distribution and a 95.45 % interval of ±2u, for tests. */
export function normally(valueGPerCm3: number, uGPerCm3: number): MeasuredDensity {
  return {
    valueGPerCm3,
    uGPerCm3,
    intervalGPerCm3: [valueGPerCm3 - 2 * uGPerCm3, valueGPerCm3 + 2 * uGPerCm3],
    confidence: 0.9545,
    intervalFrom: "gum",
    probabilityBelow: (x) => normalBelow((x - valueGPerCm3) / uGPerCm3),
  };
}
