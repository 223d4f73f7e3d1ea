import { expect, test } from "vitest";
import { chiSquareAbove } from "../../calibration/chi-square.ts";

// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, upper critical values [from memory].
test.each([
  [1, 3.841, 0.05],
  [2, 5.991, 0.05],
  [3, 7.815, 0.05],
  [10, 18.307, 0.05],
  [1, 10.828, 0.001],
  [4, 18.467, 0.001],
  [5, 20.515, 0.001],
])("with %s degrees of freedom χ² exceeds %s with probability %s", (dof, chiSquare, probability) => {
  expect(chiSquareAbove(chiSquare, dof) / probability).toBeCloseTo(1, 2);
});
