import { expect, test } from "vitest";
import { fineMass } from "../../../../server/metals/fineness/fine-mass.ts";
import { goldFineness, silverFineness } from "../../../../server/metals/fineness/fineness.ts";
import { fractionAtDensity } from "../../../../server/metals/fineness/fraction-at-density.ts";
import { refusalOf } from "../../../refusal-of.ts";
import { normally } from "../../conformity/normally.ts";

test("silver-copper fineness is solved on volume and meets the trade's table", () => {
  // a collectors' table (coincommunity.com) reads 10.2 ≈ 840, 10.1 ≈ 780, 10.0 ≈ 720 to the nearest ten; its silver end
  // is not stated, 0.01 g/cm³ there is 6 ‰, so the tolerance is 10 ‰
  for (const [density, permille] of [
    [10.2, 840],
    [10.1, 780],
    [10.0, 720],
  ] as const) {
    const w = fractionAtDensity("Ag", density, { Cu: 1 }, "corrected");
    expect(Math.abs(1000 * w - permille)).toBeLessThan(10);
  }
});

test("sterling's printed density 10.36 gives 925 back", () => {
  // ESPI sheet, rounded to 0.01 g/cm³: half a unit of that is 3 ‰
  const { corrected } = silverFineness(normally(10.36, 1e-4));
  expect(corrected.low).toBeLessThan(925);
  expect(corrected.high).toBeGreaterThan(920);
});

test("one thousandth of density is about six per mille of silver", () => {
  const at = (density: number) => 1000 * fractionAtDensity("Ag", density, { Cu: 1 }, "corrected");
  expect(at(10.3 * 1.001) - at(10.3)).toBeCloseTo(6, 0);
});

test("coin gold's printed 17.16 gives 900 by the corrected law, not the 892 of plainly added volumes", () => {
  // Rose, The Metallurgy of Gold; 3 ‰ is twice the uncertainty of the gold-copper term there
  const corrected = 1000 * fractionAtDensity("Au", 17.16, { Cu: 1 }, "corrected");
  const plain = 1000 * fractionAtDensity("Au", 17.16, { Cu: 1 }, "plain");
  expect(Math.abs(corrected - 900)).toBeLessThan(3.5);
  expect(plain).toBeCloseTo(892, 0);
  expect(corrected).toBeGreaterThan(plain + 5);
});

test("at 14 g/cm³ perfect weighing still leaves 14 to 16 carat open, because silver and copper are free", () => {
  const { corrected, plain, widths } = goldFineness(normally(14, 1e-4), "any");
  // plainly added volumes, all silver to all copper: 549 to 672 ‰ (computed with 19.30, 10.49, 8.96); zinc opens it further
  expect(plain.low).toBeCloseTo(548, -1);
  expect(plain.high).toBeGreaterThan(672);
  expect(corrected.low).toBeLessThan(585);
  expect(corrected.high).toBeGreaterThan(667);
  expect(widths.freedom).toBeGreaterThan(10 * widths.measurement);
});

test("naming the colour narrows the fineness and never leaves what any colour allows", () => {
  const measured = normally(15.5, 0.02);
  const any = goldFineness(measured, "any").corrected;
  for (const colour of ["yellow", "pink", "red", "green"] as const) {
    const narrowed = goldFineness(measured, colour).corrected;
    expect(narrowed.high - narrowed.low).toBeLessThan(any.high - any.low);
    expect(narrowed.low).toBeGreaterThanOrEqual(any.low - 1e-6);
    expect(narrowed.high).toBeLessThanOrEqual(any.high + 1e-6);
  }
});

test("yellow gold of 15.53, the computed density of 750/160/90, holds 750 in its interval", () => {
  const { corrected } = goldFineness(normally(15.534, 0.01), "yellow");
  expect(corrected.low).toBeLessThan(750);
  expect(corrected.high).toBeGreaterThan(750);
});

test("a density no gold alloy reaches is said to be impossible", () => {
  expect(goldFineness(normally(21.4, 0.01), "any").possible).toBe(false);
  expect(goldFineness(normally(7.2, 0.01), "any").message.code).toBe("fineness.impossible");
  expect(silverFineness(normally(8.5, 0.01)).possible).toBe(false);
});

test("warm water does not lower the fineness: the density is brought to 20 °C first", () => {
  const cold = silverFineness(normally(10.36, 0.001)).corrected;
  const warm = silverFineness(normally(10.36 / (1 + 3 * 19e-6 * 10), 0.001), 30).corrected;
  expect(warm.low).toBeCloseTo(cold.low, 1);
});

test("fine mass is an interval and carries both the mass and the alloy's freedom", () => {
  const { lowG, highG } = fineMass(10, 0.02, { low: 740, high: 760 });
  expect(lowG).toBeCloseTo(7.3852, 6);
  expect(highG).toBeCloseTo(7.6152, 6);
  expect(refusalOf(() => fineMass(0, 0.1, { low: 740, high: 760 }))).toMatchObject({
    code: "fineness.refusal.mass",
    params: { mass_g: 0 },
  });
});

test("a rule of three on density would call 750 gold in copper 581: fineness is never linear in density", () => {
  const density = 1 / (0.75 / 19.3 + 0.25 / 8.94);
  expect((density - 8.94) / (19.3 - 8.94)).toBeCloseTo(0.581, 2);
  expect(fractionAtDensity("Au", density, { Cu: 1 }, "plain")).toBeCloseTo(0.75, 6);
});
