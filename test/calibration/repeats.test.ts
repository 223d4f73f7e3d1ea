import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { agreement } from "../../calibration/agreement.ts";
import { roundingLeft } from "../../calibration/display-step.ts";
import { hung } from "../../calibration/hung.ts";
import { measure } from "../../calibration/measure.ts";
import type { Measurement } from "../../calibration/measurement.ts";
import { seededRandom } from "../../calibration/random.ts";

/** A gold coin of 7.99 g whose immersed readings vary; invented. */
function coin(immersed: readonly string[], immersedRepeatabilityGrams: number): Measurement {
  return {
    dry: { readings: ["7.9881"], unit: "g" },
    weighing: hung({ readings: immersed, unit: "g" }),
    liquid: { kind: "water", temperature: { celsius: 20, uCelsius: 0.1 }, purity: "distilled" },
    air: { kind: "stated", kgPerM3: 1.2, uKgPerM3: 0.01 },
    balance: {
      readabilityGrams: 0.0001,
      repeatabilityGrams: 0.0001,
      immersedRepeatabilityGrams,
      linearityGrams: 0,
    },
    hanger: { wireMillimetres: 0 },
    bubbleAllowanceMg: 0,
    pieces: 1,
    confidence: 0.9545,
  };
}

const known = (scatterGrams: number) => ({ scatterGrams, dof: Number.POSITIVE_INFINITY });

describe("readings of one load against the stated scatter", () => {
  // NIST/SEMATECH e-Handbook 1.3.6.7.4, upper points of χ² [table values from memory]: 1 dof 3.841 at 0.05, 10.828 at 0.001; 2 dof 9.210 at 0.01
  it.each([
    [[0, Math.sqrt(2 * 3.841)], 0.05],
    [[0, Math.sqrt(2 * 10.828)], 0.001],
    [[-1, 0, 1].map((x) => x * Math.sqrt(9.21 / 2)), 0.01],
  ])("%j of a scatter of 1 come by chance with probability %s", (readings, p) => {
    expect(agreement(readings, known(1)).scatter.p).toBeCloseTo(p, 4);
  });

  it("uses F where the scatter was found with few degrees of freedom", () => {
    // F table, 1 and 10 dof: 4.96 at 0.05, 10.04 at 0.01 [printed with two decimals, from memory]
    for (const [f, p] of [
      [4.96, 0.05],
      [10.04, 0.01],
    ] as const)
      expect(agreement([0, Math.sqrt(2 * f)], { scatterGrams: 1, dof: 10 }).scatter.p).toBeCloseTo(p, 3);
  });

  it("tells a run one way, and how fast one must be to be told", () => {
    const { trend } = agreement([0, 3.2, 6.1, 9], known(1));
    expect(trend.verdict).toBe("contradict");
    expect(trend.gramsPerReading).toBeCloseTo(2.99, 9);
    // a run of exactly that speed is told in 95 of 100 cases
    const random = seededRandom(5);
    const gauss = () =>
      Math.sqrt(-2 * Math.log((random() + 0.5) / 2 ** 32)) * Math.cos((2 * Math.PI * random()) / 2 ** 32);
    const told = Array.from({ length: 4000 }, () =>
      agreement(
        [0, 1, 2, 3].map((n) => n * trend.seenGrams + gauss()),
        known(1),
      ),
    ).filter((one) => one.trend.verdict !== "agree").length;
    expect(told / 4000).toBeGreaterThan(0.935);
    expect(told / 4000).toBeLessThan(0.965);
  });

  it("has the false alarms it states on sound readings", () => {
    const random = seededRandom(9);
    const gauss = () =>
      Math.sqrt(-2 * Math.log((random() + 0.5) / 2 ** 32)) * Math.cos((2 * Math.PI * random()) / 2 ** 32);
    for (const n of [2, 3, 5, 8]) {
      const all = Array.from({ length: 20000 }, () => agreement(Array.from({ length: n }, gauss), known(1)));
      const share = (of: (one: (typeof all)[number]) => string, verdict: string) =>
        all.filter((one) => of(one) === verdict).length / all.length;
      expect(
        share(({ verdict }) => verdict, "contradict"),
        `${n} stopped`,
      ).toBeLessThan(0.0025);
      expect(
        share(({ scatter }) => scatter.verdict, "differ"),
        `${n} told`,
      ).toBeCloseTo(0.019, 2);
      if (n > 3)
        expect(
          share(({ serial }) => serial.verdict, "differ"),
          `${n} alike`,
        ).toBeLessThan(0.016);
    }
  });

  it("names the reading that stands out", () => {
    expect(agreement([24.101, 24.1012, 24.1009, 17.3], known(0.001)).standsOut).toBe(3);
    expect(agreement([17.3, 24.101, 24.1012], known(0.001)).standsOut).toBe(0);
  });
});

describe("the mean of readings that disagree", () => {
  it("of 7.5320 and 7.5356 with a scatter of 0.27 mg is no better than half their span", () => {
    const row = measure(coin(["7.5320", "7.5356"], 0.00027)).budget.find(
      ({ input }) => input === "immersed, repeatability",
    );
    expect(row?.u).toBeCloseTo(0.0018, 9);
  });

  it("widens by the Birge ratio before that, from two readings on", () => {
    // s = 0.42 mg for a stated 0.3 mg with two roundings: χ² = 1.9, p = 0.17
    const row = measure(coin(["7.5320", "7.5326"], 0.0003)).budget.find(
      ({ input }) => input === "immersed, repeatability",
    );
    expect(row?.u).toBeCloseTo(0.0003, 9);
  });

  it("is never more certain for a reading that contradicts the others", () => {
    const steps = fc.array(fc.integer({ min: -6, max: 6 }), { minLength: 1, maxLength: 7 });
    fc.assert(
      fc.property(
        steps,
        fc.integer({ min: -400, max: 400 }),
        fc.integer({ min: 1, max: 6 }),
        (all, odd, s) => {
          const text = (k: number) => (7.53 + k * 1e-4).toFixed(4);
          const scatter = s * 1e-4;
          const before = all.map(text);
          const after = [...before, text(odd)];
          const verdict = agreement(
            after.map(Number),
            known(Math.hypot(scatter, 1e-4 / Math.sqrt(6))),
          ).verdict;
          fc.pre(verdict !== "agree");
          const u = (readings: string[]) => {
            const result = measure(coin(readings, scatter));
            return result.expandedGPerCm3 / result.gPerCm3 ** 2;
          };
          // the mean moves by some mg of 450, and with it what air and dry reading contribute
          expect(u(after)).toBeGreaterThanOrEqual(u(before) * (1 - 1e-4));
        },
      ),
      { numRuns: 400, seed: 12 },
    );
  });
});

describe("what repeats leave of a rounding", () => {
  it("is the spread of the mean of rounded readings about the true value", () => {
    const random = seededRandom(3);
    const gauss = () =>
      Math.sqrt(-2 * Math.log((random() + 0.5) / 2 ** 32)) * Math.cos((2 * Math.PI * random()) / 2 ** 32);
    for (const scatter of [0.1, 0.2, 0.35]) {
      let squares = 0;
      const values = 2000;
      const n = 400;
      for (let k = 0; k < values; k++) {
        const x = (k + 0.5) / values;
        let sum = 0;
        for (let i = 0; i < n; i++) sum += Math.round(x + scatter * gauss());
        squares += (sum / n - x) ** 2;
      }
      const left = roundingLeft(scatter, 1);
      const averaged = (scatter ** 2 + 1 / 12 - left ** 2) / n;
      expect(Math.sqrt(squares / values)).toBeCloseTo(Math.hypot(left, Math.sqrt(averaged)), 2);
    }
  });

  it("is all of it for a display that repeats itself, and nothing where the scatter is a step", () => {
    expect(roundingLeft(0, 0.01)).toBeCloseTo(0.01 / Math.sqrt(12), 15);
    expect(roundingLeft(0.01, 0.01)).toBeLessThan(1e-10);
  });
});
