import { describe, expect, it } from "vitest";
import { plain } from "../../calibration/arithmetic.ts";
import { displaced } from "../../calibration/displaced.ts";
import { flask } from "../../calibration/flask.ts";
import { hung } from "../../calibration/hung.ts";
import { measure } from "../../calibration/measure.ts";
import type { Measurement } from "../../calibration/measurement.ts";
import { seededRandom } from "../../calibration/random.ts";
import { studentQuantile } from "../../calibration/student.ts";
import { surfaceTension } from "../../calibration/suspension.ts";
import {
  dissolvedAirShift,
  risePerSolids,
  waterCompressibility,
  waterDensityKgPerM3,
} from "../../calibration/water.ts";
import oracles from "./published/oracles.json" with { type: "json" };

// Values of independent libraries, made once by oracles.py beside this file; their versions stand in the file.

describe("water beside TEOS-10 and IAPWS", () => {
  it("differs from TEOS-10 by at most 1.3 parts in a million from 0 to 40 °C", () => {
    const { celsius, teos10_at_101325_pa: teos } = oracles.water;
    expect(celsius).toHaveLength(41);
    // the formulations themselves differ: −0.2 ppm at 10 °C, +0.4 at 20, +1.15 at 40
    celsius.forEach((t, i) => {
      expect(Math.abs(waterDensityKgPerM3(t) / teos[i]! - 1), `${t} °C`).toBeLessThan(1.3e-6);
    });
  });

  it("differs from IAPWS SR6-08 by at most 1.3 parts in a million once pressed to 100 kPa", () => {
    const { celsius, iapws_sr6_08_at_100_kpa: sr6 } = oracles.water;
    celsius.forEach((t, i) => {
      if (sr6[i] === null || sr6[i] === undefined) return;
      const pressed = waterDensityKgPerM3(t) * (1 + waterCompressibility(t) * (100_000 - 101_325));
      expect(Math.abs(pressed / sr6[i] - 1), `${t} °C`).toBeLessThan(1.3e-6);
    });
  });

  it("is squeezed at one temperature as TEOS-10 says to four parts in a thousand", () => {
    oracles.water.compressibility_teos10_per_pa.forEach((kappa, i) => {
      expect(Math.abs(waterCompressibility(oracles.water.celsius[i]!) / kappa - 1)).toBeLessThan(4e-3);
    });
  });

  it("gains from salts what TEOS-10 says, to a hundredth of the gain", () => {
    const { grams_per_kg: salinity, density } = oracles.solids;
    salinity.forEach((gramsPerKg, i) => {
      if (gramsPerKg === 0) return;
      const gramsPerLitre = (gramsPerKg * density[i]!) / 1000;
      const gained = density[i]! - density[0]!;
      expect(Math.abs((gramsPerLitre * risePerSolids) / gained - 1)).toBeLessThan(1e-2);
    });
    // Bignell's air is a hundred times smaller
    expect(Math.abs(dissolvedAirShift(plain, 20))).toBeLessThan(0.003);
  });

  it("has the surface tension of IAPWS R1-76", () => {
    oracles.surface_tension.celsius.forEach((t, i) => {
      expect(surfaceTension(t)).toBeCloseTo(oracles.surface_tension.iapws[i]!, 9);
    });
  });
});

describe("Student's t beside mpmath at 40 digits", () => {
  it("agrees to a part in 10¹¹ from 1 to a million degrees of freedom", () => {
    expect(oracles.student).toHaveLength(78);
    for (const { p, dof, t } of oracles.student)
      expect(Math.abs(studentQuantile(p, dof) / t - 1), `p ${p}, ν ${dof}`).toBeLessThan(1e-11);
  });
});

const grams = (...readings: string[]) => ({ readings, unit: "g" as const });
const water = (celsius: number, uCelsius: number, formulaUKgPerM3: number) =>
  ({
    kind: "water",
    temperature: { celsius, uCelsius },
    purity: "distilled",
    dissolvedAir: "none",
    formulaUKgPerM3,
  }) as const;
const plainPiece = { hanger: { wireMillimetres: 0 }, bubbleAllowanceMg: 0, pieces: 1, confidence: 0.9545 };

describe("budgets beside python3-uncertainties", () => {
  const cases: Record<string, Measurement> = {
    bench: {
      ...plainPiece,
      dry: grams("31.1035"),
      weighing: hung(grams("28.1435")),
      liquid: water(21.4, 0.1 / Math.sqrt(3), 0.005),
      air: { kind: "stated", kgPerM3: 1.19, uKgPerM3: 0.03 / Math.sqrt(3) },
      balance: {
        readabilityGrams: 1e-4,
        repeatabilityGrams: 1e-4,
        immersedRepeatabilityGrams: 3e-4,
        linearityGrams: 0,
      },
    },
    kitchen: {
      ...plainPiece,
      dry: grams("8.00"),
      weighing: hung(grams("7.38")),
      liquid: water(19, 1 / Math.sqrt(3), 0.2),
      air: { kind: "stated", kgPerM3: 1.2, uKgPerM3: 0.05 / Math.sqrt(3) },
      balance: { readabilityGrams: 0.01, repeatabilityGrams: 0.01, linearityGrams: 0 },
    },
    coin: {
      ...plainPiece,
      dry: grams("8.630"),
      weighing: hung(grams("7.800")),
      liquid: water(20, 0.5, 0),
      air: { kind: "stated", kgPerM3: 1.2, uKgPerM3: 0.03 },
      balance: { readabilityGrams: 0.001, repeatabilityGrams: 0, linearityGrams: 0 },
    },
  };

  it("agree in value and u to a part in a thousand million", () => {
    expect(oracles.budgets).toHaveLength(3);
    for (const { name, density, u } of oracles.budgets) {
      const result = measure(cases[name]!);
      expect(Math.abs(result.gPerCm3 / density - 1), name).toBeLessThan(1e-12);
      // the library differentiates the temperature numerically
      expect(Math.abs(result.uGPerCm3 / u - 1), name).toBeLessThan(1e-8);
    }
  });
});

describe("intervals beside ten million plain trials in numpy", () => {
  const cases: Record<string, Measurement> = {
    "kitchen gold": {
      ...plainPiece,
      dry: grams("31.1"),
      weighing: hung(grams("29.5")),
      liquid: water(20, 0.5, 0),
      air: { kind: "stated", kgPerM3: 1.2, uKgPerM3: 0.03 },
      balance: { readabilityGrams: 0.1, repeatabilityGrams: 0.05, linearityGrams: 0 },
    },
    "few readings": {
      ...plainPiece,
      dry: grams("31.1035"),
      // mean 1.6120 g, s = 0.0020 g, as stated
      weighing: displaced(grams("1.613732", "1.610268", "1.613732", "1.610268")),
      liquid: water(20, 0.1, 0),
      air: { kind: "stated", kgPerM3: 1.2, uKgPerM3: 0.03 },
      balance: {
        readabilityGrams: 1e-4,
        repeatabilityGrams: 1e-4,
        immersedRepeatabilityGrams: 0.002,
        linearityGrams: 0,
      },
    },
    "bubbles in a flask": {
      ...plainPiece,
      dry: grams("31.104"),
      weighing: flask({ full: grams("73.211"), withPiece: grams("101.355") }),
      liquid: water(20, 0.1, 0),
      air: { kind: "stated", kgPerM3: 1.2, uKgPerM3: 0.03 },
      balance: { readabilityGrams: 0.001, repeatabilityGrams: 0.001, linearityGrams: 0 },
      bubbleAllowanceMg: 6,
    },
  };

  it("agree in both ends to a five-hundredth of u: a skewed one, one from four readings, one with bubbles", () => {
    expect(oracles.intervals).toHaveLength(3);
    for (const { name, interval, standard_error: error } of oracles.intervals) {
      const result = measure(cases[name]!, seededRandom(5));
      // three standard errors of the plain trials and the numerical tolerance kept here, a fifth of two digits of u
      const allowed = 0.002 * result.uGPerCm3 + 3 * Math.max(...error);
      interval.forEach((end, i) => {
        expect(Math.abs(result.monteCarlo!.intervalGPerCm3[i]! - end), `${name} ${i}`).toBeLessThan(allowed);
      });
    }
  });
});

describe("the inputs of a measurement", () => {
  it("each stand in the budget once, under a name of their own", () => {
    const names = measure({
      ...plainPiece,
      dry: grams("31.104"),
      weighing: flask({ full: grams("73.211"), withPiece: grams("101.355") }),
      liquid: water(20, 0.1, 0.005),
      air: { kind: "altitude", metres: 100 },
      balance: { readabilityGrams: 0.001, repeatabilityGrams: 0.001, linearityGrams: 0.001 },
      hanger: { wireMillimetres: 0.1 },
    }).budget.map((row) => row.input);
    expect(new Set(names).size).toBe(names.length);
  });
});
