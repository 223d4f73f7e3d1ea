import { expect, test } from "vitest";
import type { LotPrice } from "../../../server/lots/lot.ts";
import { payFor, rounded } from "../../../server/lots/payout.ts";

const price: LotPrice = {
  metal: "gold",
  price: "100",
  currency: "EUR",
  per: "ozt",
  source: "invented for the test",
  at: "2026-03-02 09:30",
  ratePercent: "100",
  fee: "0",
  rounding: "down",
  lockedAt: "2026-03-02T09:31:00.000Z",
};

test("100 a troy ounce and 5 a pennyweight are the same 3.215 a gram", () => {
  // worked example of the Oregon Department of Agriculture for buyers of precious metals: $100/ozt = $5/dwt = $3.215/g
  expect(payFor(1, price)).toBeCloseTo(3.215, 3);
  expect(payFor(1, { ...price, price: "5", per: "dwt" })).toBeCloseTo(3.215, 3);
});

test("the rate is a share of the price", () => {
  expect(payFor(31.1034768, { ...price, ratePercent: "92" })).toBeCloseTo(92, 9);
});

test("money is rounded in the stated direction, and a whole cent stays", () => {
  expect(rounded(10.019, "down")).toBe(10.01);
  expect(rounded(10.011, "up")).toBe(10.02);
  expect(rounded(10.07, "down")).toBe(10.07);
  expect(rounded(1.1 * 3, "up")).toBe(3.3);
});

test("ties go to the even cent, others to the nearest", () => {
  // ISO 80000-1 annex B, rule A, in its own examples 12.25 → 12.2 and 12.35 → 12.4 (from memory), here in cents
  expect(rounded(0.1225, "half-even")).toBe(0.12);
  expect(rounded(12.125, "half-even")).toBe(12.12);
  expect(rounded(12.375, "half-even")).toBe(12.38);
  expect(rounded(12.1251, "half-even")).toBe(12.13);
});
