import { normalBelow, normalDensity } from "./normal.ts";

/**
 * Probability that χ² with `dof` degrees of freedom exceeds a value of zero or more; dof a whole number of one or more.
 * Abramowitz & Stegun 26.4.4 and 26.4.5.
 */
export function chiSquareAbove(chiSquare: number, dof: number): number {
  const chi = Math.sqrt(chiSquare);
  const odd = dof % 2 === 1;
  let term = odd ? chi : 1;
  let sum = odd ? 0 : 1;
  for (let r = 1; r <= Math.floor((dof - (odd ? 1 : 2)) / 2); r++) {
    if (odd) {
      sum += term;
      term *= chiSquare / (2 * r + 1);
    } else {
      term *= chiSquare / (2 * r);
      sum += term;
    }
  }
  return odd
    ? 2 * normalBelow(-chi) + 2 * normalDensity(chi) * sum
    : Math.sqrt(2 * Math.PI) * normalDensity(chi) * sum;
}
