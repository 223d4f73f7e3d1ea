import { massWords } from "./amounts.ts";
import { type CheckedBy, type CheckResult, scatterPerReadability, shownGrams } from "./check.ts";
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
}

/**
 * The daily check weight. Passes when the error is within what the weight may be off and three times what the balance
 * scatters. Tighter limits grow on the control chart.
 */
export function checkWeight(test: CheckWeightTest, checked: CheckedBy): CheckResult<CheckWeightFound> {
  const { weight, readabilityGrams, repeatabilityGrams } = test;
  const { grams, offMostGrams } = conventional(weight);
  const errorGrams = shownGrams(test.reading) - grams;
  const tolerableGrams =
    offMostGrams + 3 * Math.hypot(repeatabilityGrams, scatterPerReadability * readabilityGrams);
  const passed = Math.abs(errorGrams) <= tolerableGrams;
  return {
    ...checked,
    kind: "check-weight",
    passed,
    says: `The ${massWords(weight.nominalGrams)} check weight reads ${massWords(errorGrams)} off, ${passed ? "within" : "more than"} ${massWords(tolerableGrams)}.`,
    todo: passed
      ? "Record it as a point of the check weight chart."
      : "Clean weight and pan, level, let warm up, and weigh it again; every attempt is kept. If it stays, adjust the balance as its manual says and look back at what was weighed since the last good check.",
    found: { errorGrams, tolerableGrams },
  };
}
