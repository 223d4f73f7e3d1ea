import { expect, test } from "vitest";
import { recordedDensity } from "../../../server/conformity/recorded-density.ts";
import { commonShare, fineSum, type LotFine, lotFine } from "../../../server/lots/lot-fine.ts";
import { stated } from "../compute/answers.ts";

/** An invented piece of about 13.4 g/cm³ on a 0.01 g scale, through the program's own compute. */
function weighed(dry = "12.90", immersed = "11.93") {
  return stated({
    id: "a",
    method: "hung",
    dry: { readings: [dry] },
    immersed: { readings: [immersed] },
    liquid: {
      kind: "water",
      temperature_c: 21.4,
      temperature_u_c: 0.6,
      purity: "distilled",
      dissolved_solids_mg_l: 0,
    },
    air: { density_kg_m3: 1.19, u_kg_m3: 0.017 },
    balance: { readability_g: 0.01, repeatability_g: 0.01, linearity_g: 0.02 },
    hanger: { wire_mm: 0.1, zeroed: "immersed" },
    bubble_allowance_mg: 1,
    pieces: 1,
    claim: "au-585",
    confidence: 0.9545,
  });
}

function fine(dry = "12.90", immersed = "11.93"): LotFine {
  const answer = weighed(dry, immersed);
  const found = lotFine({
    metal: "gold",
    measured: recordedDensity(answer, 0.9545),
    celsius: 21.4,
    dryG: Number(dry),
    stepG: 0.01,
    share: commonShare(answer.budget),
  });
  if (!found) throw new Error("no such alloy");
  return found;
}

test("what each reading brings anew is repeatability, resolution and zero; all else is common", () => {
  const { budget } = weighed();
  const own = budget.filter(({ input }) => /repeatability|resolution|zero drift/.test(input));
  expect(commonShare(budget)).toBeCloseTo(1 - own.reduce((sum, { share }) => sum + share, 0), 12);
  expect(commonShare(budget)).toBeGreaterThan(0.05);
  expect(commonShare(budget)).toBeLessThan(0.95);
  expect(commonShare(undefined)).toBe(1);
});

test("one piece comes to its own interval", () => {
  const one = fine();
  const { lowG, highG } = fineSum([one]);
  expect(lowG).toBeCloseTo(one.lowG, 9);
  expect(highG).toBeCloseTo(one.highG, 9);
});

test("twenty like pieces: the common part grows twentyfold, the own part by the root of twenty", () => {
  const one = fine();
  const sum = fineSum(Array.from({ length: 20 }, () => one));
  // GUM 5.2.2, equations (13) and (16) with r = 1 for what is common and r = 0 for what is not
  const [whole, common] = [one.middle.lowG - one.lowG, one.middle.lowG - one.common.lowG];
  const expected = 20 * one.middle.lowG - Math.sqrt((20 * common) ** 2 + 20 * (whole ** 2 - common ** 2));
  expect(sum.lowG).toBeCloseTo(expected, 9);
  // never as narrow as independent pieces, never as wide as all errors in step
  expect(sum.lowG).toBeGreaterThan(20 * one.lowG);
  expect(sum.lowG).toBeLessThan(20 * one.middle.lowG - Math.sqrt(20) * whole);
});

test("simulated lots hold their true fine mass inside the interval, with one water and one linearity for the whole lot", () => {
  // Drawn by a plain generator of its own (Park and Miller, 1988, minimal standard); nothing of the program's budget is used.
  let state = 20260302;
  const uniform = () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  const density = 13.3;
  const perGram = exactLow(density);
  const pieces = 6;
  const lots = 40;
  let held = 0;
  for (let lot = 0; lot < lots; lot++) {
    // common: a thermometer off by N(0, 0.6 °C) at a slope of 0.021 %/°C, a linearity within ±0.02 g; own: s = 0.01 g
    const water = 0.99792 * (1 + 0.00021 * 0.6 * normal());
    const bend = 0.02 * (2 * uniform() - 1);
    const fines: LotFine[] = [];
    let truth = 0;
    for (let i = 0; i < pieces; i++) {
      const mass = 8 + 12 * uniform();
      truth += mass * perGram;
      const dry = (mass + 0.01 * normal()).toFixed(2);
      const wet = (mass - (mass / density) * water - bend + 0.01 * normal()).toFixed(2);
      fines.push(fine(dry, wet));
    }
    // The low end is held against the fine mass that the same freedom of the alloy leaves at the true density.
    const { lowG } = fineSum(fines);
    const middle = fines.reduce((sum, one) => sum + one.middle.lowG, 0);
    if (Math.abs(truth - middle) <= middle - lowG) held += 1;
  }
  // 95 % of 40 lots are 38; fewer than 33 has a chance below one in a hundred (binomial)
  expect(held).toBeGreaterThanOrEqual(33);
});

/** Fine gold in one gram at the low end of the alloy's freedom, the density taken as exact. */
function exactLow(density: number): number {
  const found = lotFine({
    metal: "gold",
    measured: recordedDensity(
      {
        density_g_cm3: density,
        u_g_cm3: 1e-6,
        interval_g_cm3: [density - 2e-6, density + 2e-6],
        interval_from: "gum",
      },
      0.9545,
    ),
    celsius: 21.4,
    dryG: 1,
    stepG: 0.001,
    share: 1,
  });
  return found?.middle.lowG ?? Number.NaN;
}
