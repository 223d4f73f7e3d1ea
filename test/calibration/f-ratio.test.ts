import { describe, expect, test } from "vitest";
import { probabilityOfRatio } from "../../calibration/f-ratio.ts";

describe("upper tail of the F distribution", () => {
  test.each([0.2, 1, 3.5, 40])("with 2 and n dof it is (1 + 2f/n)^(−n/2), here f = %s", (f) => {
    for (const n of [1, 2, 7, 40])
      expect(probabilityOfRatio(f, 2, n)).toBeCloseTo((1 + (2 * f) / n) ** (-n / 2), 10);
  });

  // upper 5 % and 1 % points printed in F tables with two decimals [from memory; agreed with scipy 1.17.1 stats.f.sf,
  // whose values stand in the last column]
  test.each([
    [5, 10, 3.33, 0.049831275797],
    [5, 10, 5.64, 0.00997797875],
    [5, 20, 4.1, 0.010029156534],
    [9, 30, 3.07, 0.009936381032],
  ])("dof %s and %s at %s leave %s", (dof, houseDof, ratio, tail) => {
    expect(probabilityOfRatio(ratio, dof, houseDof)).toBeCloseTo(tail, 11);
  });

  test("swapping the two samples turns the tail over", () => {
    for (const f of [0.3, 1, 2.7])
      expect(probabilityOfRatio(f, 4, 9) + probabilityOfRatio(1 / f, 9, 4)).toBeCloseTo(1, 12);
  });
});
