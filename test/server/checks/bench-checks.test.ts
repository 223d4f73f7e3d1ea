import { describe, expect, test } from "vitest";
import { checkWeight } from "../../../server/checks/check-weight.ts";
import { conventional, nominalGrams, permissibleErrorGrams } from "../../../server/checks/check-weights.ts";
import { eccentricity } from "../../../server/checks/eccentricity.ts";
import { linearity } from "../../../server/checks/linearity.ts";
import { referencePiece } from "../../../server/checks/reference-piece.ts";
import { repeatability } from "../../../server/checks/repeatability.ts";
import { icePoint, thermometerComparison } from "../../../server/checks/thermometer.ts";
import { trainee } from "../../../server/checks/trainee.ts";
import { zeroReturn } from "../../../server/checks/zero-return.ts";

const checked = { at: "2026-03-02T08:00:00.000Z", by: "the morning watch", of: "bench balance" };

describe("repeatability", () => {
  test("the five voltages of GUM H.2, weighed as grams with one more at their mean, give their known deviation", () => {
    // GUM H.2 table H.2: V = 5.007 4.994 5.005 4.990 4.999, mean 4.9990, s(mean) 0.0032; s = 0.0032·√5. A sixth
    // reading at the mean leaves Σ(v − mean)² as it is and raises the dof from 4 to 5.
    const readings = ["5.007", "4.994", "5.005", "4.990", "4.999", "4.999"];
    const { found } = repeatability({ condition: "dry", readings, readabilityGrams: 0.001 }, checked);
    expect(found.dof).toBe(5);
    expect(found.sGrams * Math.sqrt(5 / 4)).toBeCloseTo(0.0032093614 * Math.sqrt(5), 9);
  });

  test("five weighings are refused, and how many are missing is said", () => {
    const readings = ["5.007", "4.994", "5.005", "4.990", "4.999"];
    expect(() => repeatability({ condition: "dry", readings, readabilityGrams: 0.001 }, checked)).toThrow(
      expect.objectContaining({ code: "bench-check.too-few", params: { least: 6, count: 5, missing: 1 } }),
    );
  });

  test("a display that always shows the same is not taken for a balance without scatter", () => {
    const readings = Array.from({ length: 10 }, () => "20.00");
    const result = repeatability({ condition: "dry", readings, readabilityGrams: 0.01 }, checked);
    expect(result.found.sGrams).toBe(0);
    // 0.41 d, as in USP <41> [from memory]: the two roundings of d/√12 each
    expect(result.found.repeatabilityGrams).toBeCloseTo(0.0041, 4);
    expect(result.says).toMatchObject({
      code: "bench-check.repeatability.found",
      params: { outcome: "hidden" },
    });
  });

  test("a scatter of seven last places fails and says what to look for", () => {
    const readings = ["20.0000", "20.0009", "19.9995", "20.0012", "19.9990", "20.0003"];
    const result = repeatability({ condition: "immersed", readings, readabilityGrams: 0.0001 }, checked);
    expect(result.passed).toBe(false);
    expect(result.kind).toBe("immersed-repeatability");
    expect(result.todo).toMatchObject({ code: "bench-check.immersed-repeatability.failed" });
  });

  test("a trainee who scatters three times as much as the house fails by the F-test though within the limit", () => {
    const readings = ["20.0003", "19.9998", "20.0001", "20.0004", "19.9996", "20.0000", "19.9997", "20.0005"];
    const house = { sGrams: 0.0001, dof: 40 };
    const trained = { condition: "dry", readings, readabilityGrams: 0.0001, mostGrams: 0.001 } as const;
    expect(repeatability(trained, checked).passed).toBe(true);
    const result = repeatability({ ...trained, own: house }, checked);
    expect(result.passed).toBe(false);
    expect(result.says).toMatchObject({ params: { outcome: "own" } });
  });
});

describe("check weights", () => {
  // Both the table and these rows are from memory of OIML R 111-1:2004 table 1, typed apart from each other: this
  // catches a slip of typing, not a slip of memory. Compare with the document before relying on it.
  test.each([
    [1000, 1.6, 5, 16, 50],
    [200, 0.3, 1, 3, 10],
    [100, 0.16, 0.5, 1.6, 5],
    [50, 0.1, 0.3, 1, 3],
    [20, 0.08, 0.25, 0.8, 2.5],
    [10, 0.06, 0.2, 0.6, 2],
    [5, 0.05, 0.16, 0.5, 1.6],
    [2, 0.04, 0.12, 0.4, 1.2],
    [1, 0.03, 0.1, 0.3, 1],
  ])("a weight of %s g may be off by %s, %s, %s, %s mg in E2, F1, F2, M1", (grams, ...mg) => {
    const limits = (["E2", "F1", "F2", "M1"] as const).map((c) =>
      permissibleErrorGrams({ nominalGrams: grams, class: c }),
    );
    expect(limits.map((limit) => limit * 1000)).toEqual(mg.map((limit) => expect.closeTo(limit, 9)));
  });

  test("each class is about a third of the next coarser one, as the recommendation builds them", () => {
    for (const grams of nominalGrams) {
      const [e2, f1, f2, m1] = (["E2", "F1", "F2", "M1"] as const).map((c) =>
        permissibleErrorGrams({ nominalGrams: grams, class: c }),
      ) as [number, number, number, number];
      for (const ratio of [f1 / e2, f2 / f1, m1 / f2]) {
        expect(ratio).toBeGreaterThan(2.9);
        expect(ratio).toBeLessThan(3.4);
      }
    }
  });

  test("a weight without its own calibration is taken at its limit over √3, a calibrated one at its U over 2", () => {
    expect(conventional({ nominalGrams: 20, class: "F1" }).uGrams).toBeCloseTo(0.00025 / Math.sqrt(3), 12);
    const calibrated = { conventionalGrams: 20.00011, expandedGrams: 0.00008 };
    expect(conventional({ nominalGrams: 20, class: "F1", calibrated })).toEqual({
      grams: 20.00011,
      uGrams: 0.00004,
      offMostGrams: 0.00008,
    });
  });

  test("a body that is no weight of any class serves with its calibrated value alone", () => {
    const calibrated = { conventionalGrams: 30.0021, expandedGrams: 0.0004 };
    expect(conventional({ nominalGrams: 30, calibrated }).grams).toBe(30.0021);
  });

  test("an M1 weight of 30 g is no weight of the table, and a calibrated value is asked for", () => {
    expect(() => permissibleErrorGrams({ nominalGrams: 30, class: "M1" })).toThrow(
      expect.objectContaining({ code: "bench-check.weight.no-class" }),
    );
  });

  test("a 20 g check weight of class F1 may read 0.25 mg off and the balance's own scatter more, not 2 mg", () => {
    const weight = { nominalGrams: 20, class: "F1" } as const;
    const daily = { weight, readabilityGrams: 0.0001, repeatabilityGrams: 0.0001 };
    expect(checkWeight({ ...daily, reading: "20.0004" }, checked).passed).toBe(true);
    const bad = checkWeight({ ...daily, reading: "20.0020" }, checked);
    expect(bad.passed).toBe(false);
    expect(bad.todo).toMatchObject({ code: "bench-check.check-weight.failed" });
  });
});

describe("linearity and span", () => {
  const weights = (...grams: number[]) =>
    grams.map((nominalGrams) => ({ nominalGrams, class: "E2" }) as const);

  test("a balance that reads 0.1 % low everywhere has a span error and no fault of linearity", () => {
    const loads = [20, 50, 100, 200].map((grams) => ({
      weights: weights(grams),
      readings: [(grams * 0.999).toFixed(3)],
    }));
    const result = linearity({ loads, readabilityGrams: 0.001, repeatabilityGrams: 0.001 }, checked);
    expect(result.passed).toBe(true);
    expect(result.found.spanError).toBeCloseTo(-0.001, 6);
    expect(result.found.largestDepartureGrams).toBeLessThan(1e-9);
    expect(result.says).toMatchObject({ params: { side: "low", span_percent: expect.closeTo(0.1, 4) } });
  });

  test("a bow of 8 mg in the middle of the range fails and its half-width goes into budgets", () => {
    const loads = [
      { weights: weights(50), readings: ["50.000"] },
      { weights: weights(100), readings: ["100.008"] },
      { weights: weights(200), readings: ["200.000"] },
    ];
    const result = linearity({ loads, readabilityGrams: 0.001, repeatabilityGrams: 0.001 }, checked);
    expect(result.passed).toBe(false);
    // line through zero: slope 100·0.008/(50² + 100² + 200²) = 1.524e-5; departure at 100 g is 8 − 1.52 mg
    expect(result.found.largestDepartureGrams).toBeCloseTo(0.008 - 0.1 * 0.01523809524, 9);
    expect(result.found.linearityGrams).toBeGreaterThan(result.found.largestDepartureGrams);
  });

  test("M1 weights are too coarse for a balance of 0.1 mg, and the test says so", () => {
    const loads = [50, 100, 200].map((nominalGrams) => ({
      weights: [{ nominalGrams, class: "M1" } as const],
      readings: [`${nominalGrams}.0000`],
    }));
    const result = linearity({ loads, readabilityGrams: 0.0001, repeatabilityGrams: 0.0001 }, checked);
    expect(result.says).toMatchObject({ params: { weights: "coarse" } });
    expect(result.todo).toMatchObject({ code: "bench-check.linearity.coarse" });
  });
});

describe("a trainee", () => {
  /** ten runs whose s is the given multiple of the house's 0.002 g/cm³ */
  const runs = (times: number) => {
    const z = [1, -1, 1, -1, 1, -1, 1, -1, 1, -1];
    const s = Math.sqrt(10 / 9);
    return z.map((one) => 8.96 + (one / s) * times * 0.002);
  };
  const judged = (ratio: number, dof: number) =>
    trainee(
      {
        trainee: "Ana",
        piece: "copper rod",
        runsGPerCm3: runs(Math.sqrt(ratio)),
        own: { sGPerCm3: 0.002, dof },
      },
      checked,
    );

  // upper 5 % points of F, NIST/SEMATECH e-Handbook of Statistical Methods 1.3.6.7.3 [from memory], three decimals
  test.each([
    { house: 6, point: 4.099 },
    { house: 9, point: 3.179 },
    { house: 11, point: 2.896 },
    { house: 24, point: 2.3 },
  ])(
    "with nine degrees of freedom against $house is called larger just above F = $point",
    ({ house, point }) => {
      expect(judged(point - 0.001, house).passed).toBe(true);
      expect(judged(point + 0.001, house).passed).toBe(false);
      expect(judged(point, house).found.ratio).toBeCloseTo(point, 9);
    },
  );

  test("who scatters less than the house passes: the test is one-sided", () => {
    expect(judged(0.01, 9).passed).toBe(true);
  });
});

describe("corners and zero", () => {
  test("a corner 0.9 mg off on a balance of 0.1 mg fails; its u per gram follows EURAMET cg-18", () => {
    const places = [
      { place: "front left", reading: "100.0002" },
      { place: "front right", reading: "99.9991" },
      { place: "back", reading: "100.0001" },
    ];
    const result = eccentricity(
      { loadGrams: 100, centre: "100.0000", places, readabilityGrams: 0.0001 },
      checked,
    );
    expect(result.passed).toBe(false);
    expect(result.found.place).toBe("front right");
    expect(result.found.uPerGram * 100).toBeCloseTo(0.0009 / (2 * Math.sqrt(3)), 9);
  });

  test("a zero one last place off passes, two fail", () => {
    const zero = (after: string) =>
      zeroReturn({ zeros: [{ before: "0.0001", after }], readabilityGrams: 0.0001 }, checked);
    expect(zero("0.0002").passed).toBe(true);
    expect(zero("0.0003").passed).toBe(false);
  });
});

describe("thermometer", () => {
  test("0.3 °C in melting ice is corrected, 0.9 °C is a thermometer to put away", () => {
    const good = icePoint({ readingsCelsius: [0.3, 0.3, 0.4], resolutionCelsius: 0.1 }, checked);
    expect(good.passed).toBe(true);
    expect(good.found.correctionCelsius).toBeCloseTo(-1 / 3, 9);
    // √(scatter² + 0.1²/6 + 0.01²): s of 0.3 0.3 0.4 is 0.0577, over √3 is 0.0333
    expect(good.found.uCelsius).toBeCloseTo(Math.hypot(1 / 30, 0.1 / Math.sqrt(6), 0.01), 9);
    expect(icePoint({ readingsCelsius: [0.9, 0.9, 0.8], resolutionCelsius: 0.1 }, checked).passed).toBe(
      false,
    );
  });

  test("readings that are all the same scatter by nothing: the other parts have no end of degrees of freedom", () => {
    // 0.2 + 0.2 + 0.2 is not 3 × 0.2 in binary
    const { found } = icePoint({ readingsCelsius: [0.2, 0.2, 0.2], resolutionCelsius: 0.1 }, checked);
    expect(found.dof).toBeNull();
    expect(found.uCelsius).toBeCloseTo(Math.hypot(0.1 / Math.sqrt(6), 0.01), 12);
  });

  test("two thermometers 1.4 °C apart fail, and the ice point is named as the judge", () => {
    const pairs = [20.1, 20.3, 20.2].map((ownCelsius) => ({
      ownCelsius,
      referenceCelsius: ownCelsius + 1.4,
    }));
    const result = thermometerComparison({ pairs, resolutionCelsius: 0.1, referenceUCelsius: 0.1 }, checked);
    expect(result.passed).toBe(false);
    expect(result.says).toMatchObject({ params: { side: "low", error_celsius: expect.closeTo(1.4, 9) } });
    expect(result.todo).toMatchObject({ code: "bench-check.thermometer.failed" });
  });
});

describe("reference piece", () => {
  const stated = { gPerCm3: 8.96, expandedGPerCm3: 0.006, at: "2025-06-01" };

  test("E_n takes both uncertainties in quadrature: 0.02 off with U of 0.012 and 0.016 is exactly 1", () => {
    const { found } = referencePiece(
      {
        piece: "copper rod",
        stated: { ...stated, expandedGPerCm3: 0.012 },
        measured: { gPerCm3: 8.98, expandedGPerCm3: 0.016 },
      },
      checked,
    );
    expect(found.en).toBeCloseTo(1, 9);
    expect(found.blindBelowGPerCm3).toBeCloseTo(0.02, 12);
  });

  test("a rod found 0.03 too light fails, and bubbles are named first", () => {
    const result = referencePiece(
      { piece: "copper rod", stated, measured: { gPerCm3: 8.93, expandedGPerCm3: 0.008 } },
      checked,
    );
    expect(result.passed).toBe(false);
    expect(result.found.en).toBeCloseTo(-3, 9);
    expect(result.todo).toMatchObject({ code: "bench-check.reference-piece.low" });
  });

  test("an uncertainty of nothing is refused instead of passing nothing or everything", () => {
    const measured = { gPerCm3: 8.96, expandedGPerCm3: 0 };
    expect(() => referencePiece({ piece: "copper rod", stated, measured }, checked)).toThrow(
      expect.objectContaining({ code: "bench-check.reference-piece.u-not-above-zero" }),
    );
  });
});
