import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { displaced } from "../../calibration/displaced.ts";
import { hung as byHanging } from "../../calibration/hung.ts";
import { Inputs } from "../../calibration/input.ts";
import { measure } from "../../calibration/measure.ts";
import type { Measurement } from "../../calibration/measurement.ts";
import { propagate } from "../../calibration/propagation.ts";
import { gramsPerUnit } from "../../calibration/units.ts";

/** Pieces of 2 to 500 g and 2 to 22 g/cm³, hung in water of 5 to 35 °C, written with four decimals. */
const pieces = fc.record({
  grams: fc.double({ min: 2, max: 500, noNaN: true }),
  gPerCm3: fc.double({ min: 2, max: 22, noNaN: true }),
  celsius: fc.double({ min: 5, max: 35, noNaN: true }),
});

function hung(dry: string, immersed: string, celsius: number, readabilityGrams = 1e-4): Measurement {
  return {
    dry: { readings: [dry], unit: "g" },
    weighing: byHanging({ readings: [immersed], unit: "g" }),
    liquid: { kind: "water", temperature: { celsius, uCelsius: 0.1 }, purity: "distilled" },
    air: { kind: "stated", kgPerM3: 1.2, uKgPerM3: 0.02 },
    balance: { readabilityGrams, repeatabilityGrams: readabilityGrams, linearityGrams: 0 },
    hanger: { wireMillimetres: 0 },
    bubbleAllowanceMg: 0,
    pieces: 1,
    confidence: 0.9545,
  };
}

const readings = ({ grams, gPerCm3 }: { grams: number; gPerCm3: number }) =>
  [grams.toFixed(4), (grams * (1 - 1 / gPerCm3)).toFixed(4)] as const;

describe("for any piece", () => {
  it("scaling every reading leaves the density as it is", () => {
    fc.assert(
      fc.property(pieces, fc.integer({ min: 2, max: 9 }), (piece, factor) => {
        const [dry, immersed] = readings(piece);
        const scaled = (text: string) => (Number(text) * factor).toFixed(4);
        const once = measure(hung(dry, immersed, piece.celsius)).gPerCm3;
        const more = measure(hung(scaled(dry), scaled(immersed), piece.celsius)).gPerCm3;
        expect(Math.abs(more / once - 1)).toBeLessThan(1e-11);
      }),
      { numRuns: 100, seed: 1 },
    );
  });

  it("the same mass on both sides has no uncertainty: dry minus dry is nothing", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (value, u) => {
          const inputs = new Inputs();
          const dry = inputs.normal("dry", "g", value, u);
          const nothing = propagate((a, of) => a.minus(of(dry), of(dry)), inputs);
          expect(nothing.value).toBe(0);
          expect(nothing.u).toBe(0);
          const one = propagate((a, of) => a.over(of(dry), of(dry)), inputs);
          expect(one.u / Math.max(u, 1e-9)).toBeLessThan(1e-12 / Math.min(value, 1));
        },
      ),
      { numRuns: 100, seed: 2 },
    );
  });

  it("the unit it was entered in does not change the result", () => {
    fc.assert(
      fc.property(pieces, fc.constantFrom("mg", "kg", "ct", "ozt", "dwt", "gn", "oz"), (piece, unit) => {
        const [dry, immersed] = readings(piece);
        // enough decimals that the conversion back to grams is good to 1e-12
        const inUnit = (text: string) => (Number(text) / Number(gramsPerUnit[unit])).toFixed(14);
        const given = hung(dry, immersed, piece.celsius);
        const other: Measurement = {
          ...given,
          dry: { readings: [inUnit(dry)], unit },
          weighing: byHanging({ readings: [inUnit(immersed)], unit }),
        };
        const [a, b] = [measure(given), measure(other)];
        // the displaced mass is down to a thirtieth of the readings and passes their rounding on
        expect(Math.abs(b.gPerCm3 / a.gPerCm3 - 1)).toBeLessThan(1e-10);
        expect(Math.abs(b.uGPerCm3 / a.uGPerCm3 - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: 100, seed: 3 },
    );
  });

  it("the span of the balance never reaches the density, whatever it is", () => {
    fc.assert(
      fc.property(pieces, fc.double({ min: 1e-6, max: 0.05, noNaN: true }), (piece, spanU) => {
        const given = hung(...readings(piece), piece.celsius);
        const row = measure({ ...given, balance: { ...given.balance, spanU } }).budget.find(
          ({ input }) => input === "balance span",
        )!;
        expect(row.u).toBe(spanU);
        expect(row.contributionGPerCm3).toBeLessThan(1e-12);
      }),
      { numRuns: 100, seed: 4 },
    );
  });

  it("the true density comes back from readings worked out by forces", () => {
    fc.assert(
      fc.property(pieces, ({ grams, gPerCm3, celsius }) => {
        const given = hung("1.0000", "0.5000", celsius);
        const liquid = measure(given).liquidGPerCm3 ?? Number.NaN;
        const [air, weights] = [1.2e-3, 1 - 1.2e-3 / 8];
        const volume = grams / gPerCm3;
        const dry = (grams - volume * air) / weights;
        const immersed = (grams - volume * liquid) / weights;
        const found = measure(hung(dry.toFixed(12), immersed.toFixed(12), celsius));
        expect(Math.abs(found.gPerCm3 / gPerCm3 - 1)).toBeLessThan(1e-9);
        expect(Math.abs(found.volumeCm3 / volume - 1)).toBeLessThan(1e-9);
        expect(Math.abs(found.massGrams / grams - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: 100, seed: 5 },
    );
  });
});

describe("more repeats", () => {
  it("never widen the scatter's part of a mean that scatters no more than before", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 4, maxLength: 10 }),
        fc.integer({ min: 2, max: 4 }),
        (steps, times) => {
          const text = steps.map((k) => (2.96 + k * 1e-4).toFixed(4));
          const u = (rise: string[]) => {
            const given = hung("31.1035", "28.1435", 20);
            const weighing = displaced({ readings: rise, unit: "g" });
            return measure({ ...given, weighing }).budget.find(
              ({ input }) => input === "rise, repeatability",
            )!.u;
          };
          const more = Array.from({ length: times }, () => text).flat();
          expect(u(more)).toBeLessThanOrEqual(u(text) * (1 + 1e-9) + 1e-15);
        },
      ),
      { numRuns: 60, seed: 6 },
    );
  });

  it("below four are averaged with the bench's repeatability, whose part falls as 1/√n", () => {
    const u = (n: number) => {
      const given = hung("31.1035", "28.1435", 20);
      const immersed = { readings: Array.from({ length: n }, () => "28.1435"), unit: "g" } as const;
      return measure({ ...given, weighing: byHanging(immersed) }).budget.find(
        ({ input }) => input === "immersed, repeatability",
      )!.u;
    };
    expect(u(1) / u(3)).toBeCloseTo(Math.sqrt(3), 12);
    expect(u(1)).toBe(1e-4);
  });
});
