import { describe, expect, it } from "vitest";
import { normalBelow } from "../../calibration/normal.ts";
import { studentBelow, studentDensity } from "../../calibration/student.ts";
import { sumBelow } from "../../calibration/sum-below.ts";

const root3 = Math.sqrt(3);
const none = { normal: 0, widths: [], students: [] };

describe("the distribution of a sum", () => {
  // JCGM 101:2008, 9.2.3 and 9.2.4: four rectangles of u = 1 hold 95 % within ±3.88; with the fourth ten times as wide
  // within ±17.0; to more digits from the closed distributions
  it.each([
    [[1, 1, 1, 1], 3.8794067],
    [[1, 1, 1, 10], 17.0158141],
  ])("of rectangles of u = %s holds 95 % within ±%s", (us, end) => {
    const widths = us.map((u) => u * root3);
    expect(sumBelow({ ...none, widths }, end)[0]).toBeCloseTo(0.975, 7);
    expect(sumBelow({ ...none, widths }, -end)[0]).toBeCloseTo(0.025, 7);
  });

  it("of two rectangles is Simpson's triangle: 1 − (2 − x)²/8 for half-widths of 1", () => {
    for (const x of [0, 0.5, 1.9])
      expect(sumBelow({ ...none, widths: [1, 1] }, x)[0]).toBeCloseTo(1 - (2 - x) ** 2 / 8, 6);
  });

  it("of a normal value alone is the normal distribution", () => {
    for (const x of [-5, -2, 0, 0.5, 3.5])
      expect(sumBelow({ ...none, normal: 2 }, 2 * x)[0]).toBeCloseTo(normalBelow(x), 9);
  });

  it.each([3, 3.5, 4, 9, 30, 500])("of a Student value of %s degrees of freedom is Student's", (dof) => {
    for (const x of [0.3, 2, 5, 20]) {
      const [below, density] = sumBelow({ ...none, students: [{ scale: 1, dof }] }, x);
      expect(Math.abs(below - studentBelow(x, dof))).toBeLessThan(1e-5);
      expect(Math.abs(density - studentDensity(x, dof))).toBeLessThan(1e-5);
    }
  });

  it("of many equal rectangles is nearly normal, and what a narrow one adds is its variance", () => {
    const widths = Array.from({ length: 60 }, () => root3);
    expect(sumBelow({ ...none, widths }, 2 * Math.sqrt(60))[0]).toBeCloseTo(normalBelow(2), 3);
    const wide = sumBelow({ normal: 1, widths: [0.01], students: [] }, 1)[0];
    expect(wide).toBeCloseTo(normalBelow(1 / Math.hypot(1, 0.01 / root3)), 9);
  });
});
