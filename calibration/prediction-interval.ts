import { repeats } from "./repeats.ts";
import { studentQuantile } from "./student.ts";

/** Where one further value like those seen lies. */
export interface Prediction {
  /** arithmetic mean */
  mean: number;
  /** standard deviation of one value, n − 1 */
  s: number;
  /** half-width of the interval around the mean */
  half: number;
}

/**
 * What values so far foretell of one further: mean ± t·s·√(1 + 1/n) with n − 1 degrees of freedom, the prediction interval
 * for one further observation from a normal population (ISO 16269-8, clause from memory; mean and sample standard deviation
 * as JCGM 100:2008, 4.2.1 and 4.2.2, from memory). A scatter below `leastS`, what each value is uncertain by itself, is
 * luck and counts as that. Throws RangeError for fewer than two values or a confidence outside 0 to 1.
 */
export function prediction(values: readonly number[], confidence: number, leastS = 0): Prediction {
  const n = values.length;
  if (n < 2) throw new RangeError(`${n} values: right is two or more, since one has no scatter.`);
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError(`Confidence ${confidence}: right is a share between 0 and 1, such as 0.95.`);
  const seen = repeats(values);
  const s = Math.max(seen.s, leastS);
  return {
    mean: seen.mean,
    s,
    half: studentQuantile((1 + confidence) / 2, n - 1) * s * Math.sqrt(1 + 1 / n),
  };
}
