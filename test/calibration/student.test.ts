import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { describe, expect, it } from "vitest";
import { normalBelow, normalQuantile } from "../../calibration/normal.ts";
import { coverageFactor, studentBelow, studentDensity, studentQuantile } from "../../calibration/student.ts";

/** JCGM 100:2008 table G.2, t_p(ν) for p = 68.27, 90, 95, 95.45, 99, 99.73 %, as printed [printing from memory]. */
const tableG2: readonly (readonly [number, ...string[]])[] = [
  [1, "1.84", "6.31", "12.71", "13.97", "63.66", "235.80"],
  [2, "1.32", "2.92", "4.30", "4.53", "9.92", "19.21"],
  [3, "1.20", "2.35", "3.18", "3.31", "5.84", "9.22"],
  [4, "1.14", "2.13", "2.78", "2.87", "4.60", "6.62"],
  [5, "1.11", "2.02", "2.57", "2.65", "4.03", "5.51"],
  [9, "1.06", "1.83", "2.26", "2.32", "3.25", "4.09"],
  [10, "1.05", "1.81", "2.23", "2.28", "3.17", "3.96"],
  [16, "1.03", "1.75", "2.12", "2.17", "2.92", "3.54"],
  [20, "1.03", "1.72", "2.09", "2.13", "2.85", "3.42"],
  [30, "1.02", "1.70", "2.04", "2.09", "2.75", "3.27"],
  [50, "1.01", "1.68", "2.01", "2.05", "2.68", "3.16"],
  [100, "1.01", "1.66", "1.98", "2.03", "2.63", "3.08"],
];
const g2Confidence = [0.6827, 0.9, 0.95, 0.9545, 0.99, 0.9973];

describe("Student's t", () => {
  it("gives table G.2 of the GUM to its printed digits", () => {
    for (const [dof, ...row] of tableG2)
      row.forEach((printed, i) => {
        const t = coverageFactor(g2Confidence[i]!, dof);
        // half a unit of the last printed digit; at one degree of freedom and 99.73 % the table's own p is rounded
        const allowed = dof === 1 && i === 5 ? 0.05 : 0.00501;
        expect(Math.abs(t - Number(printed)), `ν = ${dof}, p = ${g2Confidence[i]}`).toBeLessThan(allowed);
      });
  });

  it("agrees with mpmath at 30 digits", () => {
    // mpmath 1.2.1, root of the regularised incomplete beta function
    for (const [p, dof, t] of [
      [0.975, 3, 3.1824463052837095],
      [0.975, 9, 2.2621571627982053],
      [0.97725, 5, 2.648654254283119],
      [0.95, 30, 1.6972608865939578],
    ] as const)
      expect(Math.abs(studentQuantile(p, dof) / t - 1)).toBeLessThan(1e-14);
  });

  it("agrees with an independent library over degrees of freedom from 0.7 to a million", () => {
    for (const dof of [0.7, 1, 1.5, 2, 3.3, 7, 19, 100, 1999, 2001, 1e4, 1e6])
      for (const p of [0.6, 0.9, 0.97725, 0.9999])
        expect(Math.abs(studentQuantile(p, dof) / tQuantile(p, dof) - 1), `${p}, ${dof}`).toBeLessThan(1e-10);
  });

  it("becomes the normal law with infinitely many degrees of freedom", () => {
    // Φ⁻¹(0.975), Φ(2): Abramowitz & Stegun table 26.1 to more digits, from mpmath
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 14);
    expect(normalBelow(2)).toBeCloseTo(0.9772498680518208, 15);
    expect(normalBelow(-6) / 9.865876450376981e-10).toBeCloseTo(1, 12);
    expect(studentQuantile(0.975, Number.POSITIVE_INFINITY)).toBe(normalQuantile(0.975));
  });

  it("has the density of mpmath at 120 digits, also for more degrees of freedom than digits", () => {
    // mpmath 1.3.0, from the logarithms of the gamma function
    for (const [dof, at1point5, at6] of [
      [2.5, 0.117668504217197, 0.00302216222587883],
      [1999, 0.129510488835322, 7.06701981032465e-9],
      [2001, 0.129510495958841, 7.06596532413715e-9],
      [1e6, 0.129517581499824, 6.07774078973954e-9],
      [1e12, 0.129517595665878, 6.07588285168099e-9],
      [4.2e61, 0.129517595665892, 6.07588284982329e-9],
    ] as const) {
      expect(Math.abs(studentDensity(1.5, dof) / at1point5 - 1), `ν = ${dof}`).toBeLessThan(2e-12);
      expect(Math.abs(studentDensity(6, dof) / at6 - 1), `ν = ${dof}`).toBeLessThan(2e-12);
    }
  });

  it("undoes itself: the probability below a quantile is the quantile's", () => {
    for (const dof of [1, 2.5, 8, 60, 500])
      expect(studentBelow(studentQuantile(0.9, dof), dof)).toBeCloseTo(0.9, 12);
  });
});
