import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import { normalBelow, normalQuantile } from "../../calibration/normal.ts";

/** The part of a recorded answer of compute that says how dense the piece is, g/cm³. */
export interface RecordedAnswer {
  density_g_cm3: number;
  u_g_cm3: number;
  interval_g_cm3: readonly [number, number];
  interval_from: "gum" | "monte-carlo";
}

/**
 * A recorded density as findings need it. The record keeps value and coverage interval, not the whole distribution:
 * each side is drawn as half a normal law that leaves the recorded share beyond the recorded end, so that a finding
 * at the recorded confidence excludes exactly what the recorded interval does not touch.
 */
export function recordedDensity(answer: RecordedAnswer, confidence: number): MeasuredDensity {
  const value = answer.density_g_cm3;
  const [low, high] = answer.interval_g_cm3;
  const k = normalQuantile((1 + confidence) / 2);
  const below = (x: number) => (x < value ? (x - value) / (value - low) : (x - value) / (high - value));
  return {
    valueGPerCm3: value,
    uGPerCm3: answer.u_g_cm3,
    intervalGPerCm3: [low, high],
    confidence,
    intervalFrom: answer.interval_from,
    probabilityBelow: (x) => normalBelow(k * below(x)),
  };
}
