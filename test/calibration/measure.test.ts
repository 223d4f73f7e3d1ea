import { describe, expect, it } from "vitest";
import { displaced } from "../../calibration/displaced.ts";
import { densityCurve, densityQuantile, measuredDensity } from "../../calibration/distribution.ts";
import { flask } from "../../calibration/flask.ts";
import { hung } from "../../calibration/hung.ts";
import { measure } from "../../calibration/measure.ts";
import type { Measurement } from "../../calibration/measurement.ts";
import { seededRandom } from "../../calibration/random.ts";

const grams = (...readings: string[]) => ({ readings, unit: "g" as const });

/** A 1 oz piece of silver at a bench balance. Readings invented; figures below from separate scripts in python. */
const bench: Measurement = {
  dry: grams("31.1035"),
  weighing: hung(grams("28.1435")),
  liquid: {
    kind: "water",
    temperature: { celsius: 21.4, uCelsius: 0.1 / Math.sqrt(3) },
    purity: "distilled",
    dissolvedAir: "none",
  },
  air: { kind: "stated", kgPerM3: 1.19, uKgPerM3: 0.03 / Math.sqrt(3) },
  balance: {
    readabilityGrams: 0.0001,
    repeatabilityGrams: 0.0001,
    immersedRepeatabilityGrams: 0.0003,
    linearityGrams: 0,
  },
  hanger: { wireMillimetres: 0 },
  bubbleAllowanceMg: 0,
  pieces: 1,
  confidence: 0.95,
};

/** An 8 g piece at a kitchen scale. */
const kitchen: Measurement = {
  ...bench,
  dry: grams("8.00"),
  weighing: hung(grams("7.38")),
  liquid: {
    kind: "water",
    temperature: { celsius: 19, uCelsius: 1 / Math.sqrt(3) },
    purity: "distilled",
    dissolvedAir: "none",
    formulaUKgPerM3: 0.2,
  },
  air: { kind: "stated", kgPerM3: 1.2, uKgPerM3: 0.05 / Math.sqrt(3) },
  balance: { readabilityGrams: 0.01, repeatabilityGrams: 0.01, linearityGrams: 0 },
};

describe("measure", () => {
  it("budgets the bench ounce as python3-uncertainties does: 10.47463612, u = 0.0011467745", () => {
    const result = measure(bench, seededRandom(1));
    expect(result.gPerCm3).toBeCloseTo(10.47463612, 8);
    expect(result.uGPerCm3).toBeCloseTo(0.0011467745, 10);
    expect(result.liquidGPerCm3).toBeCloseTo(0.997907428, 9);
    // 4·10⁶ plain trials in python: [10.472389, 10.476884]; their own noise is about 2e-6
    expect(result.monteCarlo!.intervalGPerCm3[0]).toBeCloseTo(10.472389, 5);
    expect(result.monteCarlo!.intervalGPerCm3[1]).toBeCloseTo(10.476884, 5);
    expect(result.intervalFrom).toBe("gum");
    const share = (start: string) =>
      result.budget.filter((row) => row.input.startsWith(start)).reduce((s, row) => s + row.share, 0);
    expect(share("dry")).toBeCloseTo(0.091, 3);
    expect(share("immersed")).toBeCloseTo(0.873, 3);
    expect(share("water temperature")).toBeCloseTo(0.014, 3);
    expect(share("air density")).toBeCloseTo(0.021, 3);
    expect(share("water formula")).toBeCloseTo(0.002, 3);
  });

  it("quotes the lopsided Monte Carlo interval at the kitchen scale and says why", () => {
    const result = measure(kitchen, seededRandom(1));
    expect(result.gPerCm3).toBeCloseTo(12.8683992, 7);
    expect(result.uGPerCm3).toBeCloseTo(0.3049934, 7);
    expect(result.gumIntervalGPerCm3[0]).toBeCloseTo(12.271, 3);
    expect(result.gumIntervalGPerCm3[1]).toBeCloseTo(13.466, 3);
    // 4·10⁶ plain trials in python: mean 12.8758, u 0.3058, [12.298, 13.497]
    expect(result.intervalFrom).toBe("monte-carlo");
    expect(result.monteCarlo!.meanGPerCm3).toBeCloseTo(12.8758, 3);
    expect(result.monteCarlo!.uGPerCm3).toBeCloseTo(0.3058, 3);
    expect(Math.abs(result.intervalGPerCm3[0] - 12.298)).toBeLessThan(0.002);
    expect(Math.abs(result.intervalGPerCm3[1] - 13.497)).toBeLessThan(0.002);
    expect(result.warnings).toContainEqual({
      code: "measurement.not-gum",
      severity: "warn",
      params: { skewed: "yes" },
    });
  });

  it("weighs the coin of OpenStax College Physics, example 11.10", () => {
    // 8.630 g in air, 7.800 g in water of 1.000 g/cm³: printed 10.4 g/cm³
    const coin: Measurement = {
      ...bench,
      dry: grams("8.630"),
      weighing: hung(grams("7.800")),
      liquid: { kind: "stated", name: "water", gPerCm3: 1, uGPerCm3: 0 },
      air: { kind: "stated", kgPerM3: 0, uKgPerM3: 0 },
      balance: { readabilityGrams: 0.001, repeatabilityGrams: 0, linearityGrams: 0 },
    };
    const result = measure(coin);
    expect(result.gPerCm3.toPrecision(3)).toBe("10.4");
    expect(result.relativeDensity.apparent).toBeCloseTo(10.39759, 6);
    expect(result.volumeCm3).toBeCloseTo(0.83, 12);
  });

  it("budgets the same coin in real water and air: 10.3676677, u = 0.0069620", () => {
    const coin: Measurement = {
      ...bench,
      dry: grams("8.630"),
      weighing: hung(grams("7.800")),
      liquid: {
        kind: "water",
        temperature: { celsius: 20, uCelsius: 0.5 },
        purity: "distilled",
        dissolvedAir: "none",
        formulaUKgPerM3: 0,
      },
      air: { kind: "stated", kgPerM3: 1.2, uKgPerM3: 0.03 },
      balance: { readabilityGrams: 0.001, repeatabilityGrams: 0, linearityGrams: 0 },
    };
    const result = measure(coin, seededRandom(3));
    expect(result.gPerCm3).toBeCloseTo(10.3676677, 7);
    expect(result.uGPerCm3).toBeCloseTo(0.006962, 6);
    // 4·10⁶ plain trials in numpy 1.24 (seed 5): [10.35417, 10.38118], good to about 1e-5
    expect(Math.abs(result.monteCarlo!.intervalGPerCm3[0] - 10.35417)).toBeLessThan(3e-5);
    expect(Math.abs(result.monteCarlo!.intervalGPerCm3[1] - 10.38118)).toBeLessThan(3e-5);
  });

  it("agrees with NIST SOP 2's buoyancy factor 1.000417 in the mass", () => {
    // NIST SOP 2, appendix A, 8.5.1: density 2.115 g/cm³, air 0.001199314 g/cm³, weights 8 g/cm³
    const air = 1.199314;
    const reading = 2.115;
    const lost = (reading * (1 - air / 1000)) / (reading - air / 1000);
    const result = measure({
      ...bench,
      dry: grams(String(reading)),
      weighing: displaced(grams(lost.toFixed(12))),
      liquid: { kind: "stated", name: "reference liquid", gPerCm3: 1, uGPerCm3: 0 },
      air: { kind: "stated", kgPerM3: air, uKgPerM3: 0 },
      balance: { readabilityGrams: 1e-6, repeatabilityGrams: 0, linearityGrams: 0 },
    });
    expect(result.gPerCm3).toBeCloseTo(2.115, 9);
    expect(result.massGrams / reading).toBeCloseTo(1.000417374, 9);
  });

  it("weighs in a flask what it weighs hung", () => {
    const weighing = flask({ full: grams("73.2110"), withPiece: grams("101.3545") });
    expect(measure({ ...bench, weighing }).gPerCm3).toBeCloseTo(measure(bench).gPerCm3, 10);
  });

  it("lets the balance's span error cancel in the density and stay in the mass", () => {
    const spanned = { ...bench, balance: { ...bench.balance, spanU: 0.005 } };
    const result = measure(spanned);
    const row = result.budget.find(({ input }) => input === "balance span")!;
    // half a per cent of error would be 0.05 g/cm³; what is left is rounding of the arithmetic
    expect(row.u).toBe(0.005);
    expect(row.contributionGPerCm3).toBeLessThan(1e-13);
    expect(result.uGPerCm3).toBeCloseTo(measure(bench).uGPerCm3, 12);
    expect(result.uMassGrams / result.massGrams).toBeCloseTo(0.005, 5);
    const spread = (m: Measurement) => {
      const [low, high] = measure(m, seededRandom(1)).monteCarlo!.intervalGPerCm3;
      return high - low;
    };
    expect(spread(spanned) / spread(bench)).toBeCloseTo(1, 3);
  });

  it("lets linearity cancel as far as two near loads lie on one smooth curve", () => {
    const part = (m: Measurement) => {
      const bent = { ...m, balance: { ...m.balance, linearityGrams: 0.0003 } };
      return Math.sqrt(measure(bent).uDisplacedGrams ** 2 - measure(m).uDisplacedGrams ** 2);
    };
    // u² of e(R) − e(W) with correlation cos k(R − W), k = 1.5π over the heaviest load, each u = 0.3 mg/√3
    const along = (1.5 * Math.PI * 2.96) / 31.1035;
    const two = Math.sqrt(2 * (1 - Math.cos(along)));
    expect(part(bench)).toBeCloseTo((two * 0.0003) / Math.sqrt(3), 9);
    // one load alone has all of it
    expect(part({ ...bench, weighing: displaced(grams("2.9600")) })).toBeCloseTo(0.0003 / Math.sqrt(3), 9);
    // over a larger capacity the curve is flatter
    const large = { ...bench, balance: { ...bench.balance, capacityGrams: 200 } };
    expect(part(large)).toBeLessThan(part(bench) / 5);
  });

  it("has two spans where dry and immersed were weighed on two balances", () => {
    const { spanU: _, ...second } = bench.balance as Measurement["balance"];
    const apart = measure({ ...bench, immersedBalance: { ...second, spanU: 1e-4 } });
    const share = (name: string) =>
      apart.budget.find(({ input }) => input === name)?.contributionGPerCm3 ?? Number.NaN;
    // D = R(1 + a) − W(1 + b): ∂D/∂b = −W, and of the density ρ·W/D
    expect(share("second balance, span") / apart.gPerCm3).toBeCloseTo((1e-4 * 28.1435) / 2.96, 5);
    expect(share("balance span")).toBeGreaterThan(4 * share("second balance, span"));
  });

  it("has the place on the pan of a load set by hand, and none of one that hangs", () => {
    const corner = measure({ ...bench, balance: { ...bench.balance, eccentricityPerGram: 1e-5 } });
    const rows = corner.budget.filter(({ input }) => input.includes("place on the pan"));
    expect(rows.map(({ input, u }) => [input, +u.toFixed(9)])).toEqual([
      ["dry, place on the pan", +(31.1035e-5).toFixed(9)],
    ]);
  });

  it("keeps the display's step in the budget however often the display repeats itself", () => {
    const frozen = measure({
      ...kitchen,
      dry: grams("8.00", "8.00", "8.00", "8.00", "8.00", "8.00"),
      weighing: hung(grams("7.38", "7.38", "7.38", "7.38", "7.38", "7.38")),
    });
    // two roundings of 0.01 g on either side: u(D) = 2 · 0.01/√12
    expect(frozen.uDisplacedGrams).toBeCloseTo((2 * 0.01) / Math.sqrt(12), 10);
    expect(frozen.warnings.map(({ code, params }) => [code, params.count])).toContainEqual([
      "measurement.no-scatter-shown",
      6,
    ]);
  });

  it("takes bubbles off one way only: the density rises by half the allowance and may be higher still", () => {
    const bubbly = measure({ ...bench, bubbleAllowanceMg: 2 });
    const row = bubbly.budget.find(({ input }) => input === "bubbles")!;
    expect(row.value).toBe(0.001);
    expect(row.sensitivity).toBeGreaterThan(0);
    expect(bubbly.gPerCm3 - measure(bench).gPerCm3).toBeCloseTo(0.001 * row.sensitivity, 4);
    expect(bubbly.gPerCm3).toBeGreaterThan(measure(bench).gPerCm3);
  });

  it("tells a wire's meniscus in the size that physics gives: 2.33 mg all round for 0.1 mm", () => {
    // π·d·σ/g with σ = 72.74 mN/m at 20 °C; a fifth of it may change, rectangular
    const wired = measure({ ...bench, hanger: { wireMillimetres: 0.1 } });
    const row = wired.budget.find(({ input }) => input === "wire meniscus")!;
    // 72.52 mN/m at the 21.4 °C of the bench, IAPWS R1-76(2014)
    const grams = (Math.PI * 0.0001 * 0.07252 * 1000) / 9.80665;
    expect(row.u).toBeCloseTo((0.2 * grams) / Math.sqrt(3), 7);
  });

  it("gives a distribution whose quantiles are its interval and whose curve holds everything", () => {
    for (const m of [bench, kitchen]) {
      const result = measure(m, seededRandom(4));
      const measured = measuredDensity(result);
      expect(densityQuantile(result, 0.025)).toBeCloseTo(result.intervalGPerCm3[0], 5);
      expect(measured.probabilityBelow(result.intervalGPerCm3[1])).toBeCloseTo(0.975, 5);
      const curve = densityCurve(result, 201);
      const step = curve[1]!.gPerCm3 - curve[0]!.gPerCm3;
      expect(curve.reduce((total, point) => total + point.probabilityDensity * step, 0)).toBeCloseTo(1, 2);
    }
  });

  it("refuses readings that cannot be a density, naming what they are", () => {
    expect(() => measure({ ...bench, weighing: hung(grams("31.2000")) })).toThrow(
      expect.objectContaining({
        code: "measurement.nothing-displaced.hung",
        at: "immersed",
        params: { displaced_g: expect.closeTo(-0.0965, 9), dry_g: 31.1035, wet_g: 31.2 },
      }),
    );
    expect(() => measure({ ...bench, dry: grams("0.0000") })).toThrow(
      expect.objectContaining({ code: "measurement.dry-not-above-zero", at: "dry", params: { dry_g: 0 } }),
    );
  });
});
