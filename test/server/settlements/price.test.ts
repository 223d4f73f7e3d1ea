import { expect, test } from "vitest";
import { exactly, roundedText } from "../../../calibration/fraction.ts";
import { money, payFor } from "../../../server/settlements/price.ts";

const price = { price: "100", per: "ozt", ratePercent: "100" } as const;
const paid = (grams: string, changes = {}) =>
  roundedText(payFor(exactly(grams), { ...price, ...changes }), 6, "half-even");

test("100 a troy ounce and 5 a pennyweight are the same 3.215 a gram", () => {
  // worked example of the Oregon Department of Agriculture for buyers of precious metals: $100/ozt = $5/dwt = $3.215/g
  expect(Number(paid("1"))).toBeCloseTo(3.215, 3);
  expect(paid("1", { price: "5", per: "dwt" })).toBe(paid("1"));
});

test("the rate is a share of the price, exactly", () => {
  expect(paid("31.1034768", { ratePercent: "92" })).toBe("92.000000");
});

test.each([
  ["10.019", "down", "10.01"],
  ["10.011", "up", "10.02"],
  ["10.07", "down", "10.07"],
  // 1.1 × 3 is not 3.3 in binary numbers
  ["3.3", "up", "3.30"],
  ["-0.005", "down", "-0.01"],
] as const)(
  "%s rounded %s is %s: money goes in the stated direction, and a whole cent stays",
  (amount, direction, text) => {
    expect(money(exactly(amount), "EUR", direction)).toBe(text);
  },
);

test.each([
  // ISO 80000-1 annex B, rule A, in its own examples 12.25 → 12.2 and 12.35 → 12.4 (from memory), here in cents
  ["0.1225", "0.12"],
  ["12.125", "12.12"],
  ["12.375", "12.38"],
  ["12.1251", "12.13"],
])("%s goes to %s: ties to the even cent, others to the nearest", (amount, text) => {
  expect(money(exactly(amount), "EUR", "half-even")).toBe(text);
});

test("a currency has the decimals that ISO 4217 gives it", () => {
  expect(money(exactly("1234.5"), "JPY", "half-even")).toBe("1234");
  expect(money(exactly("1.23456"), "KWD", "down")).toBe("1.234");
});
