import { describe, expect, test } from "vitest";
import { coveringFactor } from "../../../../server/metals/fineness/covering-factor.ts";
import type { FineEnd, FineParts } from "../../../../server/metals/fineness/fine-parts.ts";
import { fineSum } from "../../../../server/metals/fineness/fine-sum.ts";
import { commonShare } from "../../../../server/weighing/common-share.ts";
import { stated } from "../../compute/answers.ts";

const end = (middle: number, { common = 0, own = 0, law = 0 }): FineEnd => ({
  middle_g: middle,
  common_g: common,
  own_g: own,
  law_g: law,
});
/** A piece of 10 g whose rest of alloy is not free. */
const piece = (u: { common?: number; own?: number; law?: number }, middle = 6): FineParts => ({
  low: end(middle, u),
  high: end(middle, u),
  expected: end(middle, u),
  freedom_g: 0,
  most_g: 10,
});
const of = <T>(count: number, one: T) => Array.from({ length: count }, () => one);

describe("fine mass of many pieces", () => {
  // GUM 5.2.2, equations (13) and (16): r = 1 for what is common, r = 0 for what each reading brings of its own
  test("what is common grows with their number, what is their own with its root", () => {
    expect(fineSum(of(100, piece({ common: 0.01 })), 0.9545).uG).toBeCloseTo(1, 9);
    expect(fineSum(of(100, piece({ law: 0.01 })), 0.9545).uG).toBeCloseTo(1, 9);
    expect(fineSum(of(100, piece({ own: 0.01 })), 0.9545).uG).toBeCloseTo(0.1, 9);
    expect(fineSum(of(100, piece({ common: 0.003, own: 0.04 })), 0.9545).uG).toBeCloseTo(0.5, 9);
  });

  test("without freedom the interval is two standard uncertainties at 95.45 %", () => {
    const { lowG, highG } = fineSum(of(4, piece({ own: 0.1 })), 0.9545);
    expect(lowG).toBeCloseTo(24 - 2 * 0.2, 3);
    expect(highG).toBeCloseTo(24 + 2 * 0.2, 3);
  });

  test("expected is what the claims state while the interval holds it, else the nearer end", () => {
    const stated = (grams: number) => ({ ...piece({ law: 0.1 }), stated_g: grams });
    expect(fineSum(of(2, stated(6.1)), 0.9545).expectedG).toBeCloseTo(12.2, 9);
    expect(fineSum(of(2, stated(9)), 0.9545).expectedG).toBeCloseTo(12 + 2 * 0.2, 3);
    expect(fineSum([stated(6.1), piece({ law: 0.1 })], 0.9545).expectedG).toBeCloseTo(12.1, 9);
  });

  test("only the sum is cut, and to what the pieces weigh: pieces read too fine make up for those read too low", () => {
    const pieces = [piece({ own: 0.1 }, 12), piece({ own: 0.1 }, 8)];
    expect(fineSum(pieces, 0.9545).expectedG).toBeCloseTo(20, 9);
    expect(fineSum([piece({ own: 0.1 }, 12)], 0.9545)).toMatchObject({ highG: 10, expectedG: 10 });
    expect(fineSum([piece({ own: 0.1 }, -1)], 0.9545)).toMatchObject({ lowG: 0 });
  });
});

test("the factor covers a quantity wherever between two uncertain ends it lies", () => {
  // at width 0 the two-sided quantile 2.0000, far apart the one-sided 1.6901 (normal distribution, 95.45 %)
  expect(coveringFactor(0.9545, 0)).toBeCloseTo(2.0, 3);
  expect(coveringFactor(0.9545, 10)).toBeCloseTo(1.6901, 3);
  // Imbens and Manski 2004: at confidence 0.95 between 1.96 and 1.645
  expect(coveringFactor(0.95, 0)).toBeCloseTo(1.96, 2);
  expect(coveringFactor(0.95, 10)).toBeCloseTo(1.645, 2);
});

test("what each reading brings anew is repeatability, resolution and zero; all else is common", () => {
  const { budget } = stated({
    id: "a",
    method: "hung",
    dry: { readings: ["12.90"] },
    immersed: { readings: ["11.93"] },
    liquid: { kind: "water", temperature_c: 21.4, temperature_u_c: 0.6 },
    air: { density_kg_m3: 1.19, u_kg_m3: 0.017 },
    balance: { readability_g: 0.01, repeatability_g: 0.01, linearity_g: 0.02 },
    claim: "au-585",
  });
  const own = budget.filter(({ input }) => /repeatability|resolution|zero drift/.test(input));
  expect(commonShare(budget)).toBeCloseTo(1 - own.reduce((sum, { share }) => sum + share, 0), 12);
  expect(commonShare(budget)).toBeGreaterThan(0.05);
  expect(commonShare(budget)).toBeLessThan(0.95);
  expect(commonShare(undefined)).toBe(1);
});
