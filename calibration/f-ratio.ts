import { incompleteBeta } from "./student.ts";

/**
 * Probability that the ratio of two sample variances of the same law is at least `ratio` (F distribution, upper tail).
 * Both dof above 0. Used to tell an unusually large scatter from the pooled one (F-test).
 */
export function probabilityOfRatio(ratio: number, dof: number, pooledDof: number): number {
  return incompleteBeta(pooledDof / (pooledDof + dof * ratio), pooledDof / 2, dof / 2);
}
