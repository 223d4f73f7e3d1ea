import { message } from "../../calibration/message.ts";
import { mass, massBesideLimit } from "./amounts.ts";
import { type CheckedBy, type CheckResult, scatterPerReadability, shownGrams, spanUOf } from "./check.ts";
import { type CheckWeight, conventional } from "./check-weights.ts";

export interface CheckWeightTest {
  weight: CheckWeight;
  /** what the balance shows with the weight on, zeroed before, g */
  reading: string;
  readabilityGrams: number;
  repeatabilityGrams: number;
}

export interface CheckWeightFound {
  /** reading minus conventional mass, g: the value for the control chart */
  errorGrams: number;
  tolerableGrams: number;
  /** standard uncertainty of the scale, relative; see spanUOf */
  spanU: number;
}

/**
 * The daily check weight. Passes when the error is within what the weight may be off and three times what the balance
 * scatters. Tighter limits grow on the control chart.
 */
export function checkWeight(test: CheckWeightTest, checked: CheckedBy): CheckResult<CheckWeightFound> {
  const { weight, readabilityGrams, repeatabilityGrams } = test;
  const { grams, uGrams, offMostGrams } = conventional(weight);
  const errorGrams = shownGrams(test.reading) - grams;
  const tolerableGrams =
    offMostGrams + 3 * Math.hypot(repeatabilityGrams, scatterPerReadability * readabilityGrams);
  const passed = Math.abs(errorGrams) <= tolerableGrams;
  const { found, limit } = massBesideLimit(errorGrams, tolerableGrams);
  return {
    ...checked,
    kind: "check-weight",
    passed,
    says: message("bench-check.check-weight.found", {
      weight: mass(weight.nominalGrams),
      error: found,
      side: errorGrams < 0 ? "low" : "high",
      passed: String(passed),
      limit,
    }),
    todo: message(passed ? "bench-check.check-weight.passed" : "bench-check.check-weight.failed"),
    found: {
      errorGrams,
      tolerableGrams,
      spanU: spanUOf(
        errorGrams / grams,
        Math.hypot(uGrams, repeatabilityGrams, scatterPerReadability * readabilityGrams) / grams,
      ),
    },
  };
}
