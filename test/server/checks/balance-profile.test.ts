import { describe, expect, test } from "vitest";
import { balanceProfile } from "../../../server/checks/balance-profile.ts";
import { checkWeight } from "../../../server/checks/check-weight.ts";
import { eccentricity } from "../../../server/checks/eccentricity.ts";
import { linearity } from "../../../server/checks/linearity.ts";
import { balanceAsked, temperatureAsked } from "../../../server/checks/profile-inputs.ts";
import { repeatability } from "../../../server/checks/repeatability.ts";
import { icePoint, thermometerComparison } from "../../../server/checks/thermometer.ts";
import { correctionAt } from "../../../server/checks/thermometer-points.ts";
import { stated } from "../compute/answers.ts";

const of = "bench balance";
const by = "the morning watch";
const on = (date: string) => ({ at: `${date}T08:00:00.000Z`, by, of });
const readabilityGrams = 0.0001;

const dry = (date: string, spread: number) =>
  repeatability(
    {
      condition: "dry",
      readings: [0, 1, -1, 2, -2, 0, 1].map((n) => (20 + n * spread).toFixed(4)),
      readabilityGrams,
      mostGrams: 0.001,
    },
    on(date),
  );
const wet = repeatability(
  {
    condition: "immersed",
    readings: ["18.1003", "18.1001", "18.1006", "18.1000", "18.1004", "18.1002"],
    readabilityGrams,
  },
  on("2026-02-01"),
);
const line = linearity(
  {
    loads: [20, 50, 100].map((nominalGrams) => ({
      weights: [{ nominalGrams, class: "E2" } as const],
      readings: [`${nominalGrams}.0001`],
    })),
    readabilityGrams,
    repeatabilityGrams: 0.0001,
  },
  on("2026-02-01"),
);
const corner = eccentricity(
  {
    loadGrams: 100,
    centre: "100.0000",
    places: ["left", "right", "back"].map((place) => ({ place, reading: "100.0001" })),
    readabilityGrams,
  },
  on("2026-02-01"),
);
const ice = icePoint({ readingsCelsius: [0.1, 0.2, 0.1], resolutionCelsius: 0.1 }, on("2026-02-01"));
const at = "2026-03-02T09:00:00.000Z";
const all = [dry("2026-02-01", 0.0001), wet, line, corner, ice];

describe("a balance's profile", () => {
  test("with every check made it is valid for a year from the first of them", () => {
    const profile = balanceProfile({ balance: of, readabilityGrams, results: all, at, by });
    expect(profile.validUntil).toBe("2027-02-01T08:00:00.000Z");
    for (const { origin } of [profile.repeatability, profile.immersedRepeatability, profile.linearity])
      expect(origin).toMatchObject({ by });
  });

  test("two repeatability tests are pooled by their degrees of freedom", () => {
    const results = [dry("2026-01-10", 0.0001), dry("2026-02-10", 0.0002)];
    const profile = balanceProfile({ balance: of, readabilityGrams, results, at, by });
    const s = results.map(({ found }) => found.sGrams) as [number, number];
    expect(profile.repeatability.dof).toBe(12);
    expect(profile.repeatability.value).toBeCloseTo(Math.sqrt((s[0] ** 2 + s[1] ** 2) / 2), 12);
  });

  test("what was never checked is assumed, and the origin says so", () => {
    const profile = balanceProfile({ balance: of, readabilityGrams: 0.01, results: [], at, by });
    expect(profile.repeatability).toEqual({
      value: (2 / 3) * 0.01,
      dof: null,
      origin: { assumed: "from-readability" },
    });
  });

  test("a failed test is not hidden behind an older passed one", () => {
    const bad = { ...dry("2026-02-20", 0.0005), passed: false };
    const profile = balanceProfile({ balance: of, readabilityGrams, results: [...all, bad], at, by });
    expect(profile.repeatability.value).toBeCloseTo(bad.found.sGrams, 12);
    expect(profile.repeatability.origin).toMatchObject({ passed: false });
  });

  test("a failed test never makes a balance better than its passed ones, nor than what is assumed", () => {
    const bad = { ...dry("2026-02-20", 0), passed: false };
    const after = balanceProfile({ balance: of, readabilityGrams, results: [...all, bad], at, by });
    const before = balanceProfile({ balance: of, readabilityGrams, results: all, at, by });
    expect(after.repeatability).toEqual(before.repeatability);
    const alone = balanceProfile({ balance: of, readabilityGrams, results: [bad], at, by });
    expect(alone.repeatability.value).toBeCloseTo((2 / 3) * readabilityGrams, 12);
  });

  test("a passed test after a failed one narrows again", () => {
    const bad = { ...dry("2026-02-20", 0.0005), passed: false };
    const good = dry("2026-02-21", 0.0001);
    const profile = balanceProfile({ balance: of, readabilityGrams, results: [bad, good], at, by });
    expect(profile.repeatability.value).toBeCloseTo(good.found.sGrams, 12);
  });

  test("a test older than a year no longer counts, nor does one of tomorrow", () => {
    const results = [dry("2025-02-01", 0.0001), dry("2026-03-03", 0.0001)];
    const profile = balanceProfile({ balance: of, readabilityGrams, results, at, by });
    expect(profile.repeatability.origin).toEqual({ assumed: "from-readability" });
  });

  test("it fills the balance part of a compute request and corrects the thermometer", () => {
    const profile = balanceProfile({ balance: of, readabilityGrams, results: all, at, by });
    expect(balanceAsked(profile)).toEqual({
      readability_g: 0.0001,
      repeatability_g: profile.repeatability.value,
      repeatability_dof: 6,
      immersed_repeatability_g: profile.immersedRepeatability.value,
      immersed_repeatability_dof: 5,
      linearity_g: profile.linearity.value,
    });
    expect(temperatureAsked(profile, 21.4)?.temperature_c).toBeCloseTo(21.4 - 0.4 / 3, 9);
  });

  // 0.1 mg more shown at each load, fitted through zero; the limits of the weights are those of OIML R 111-1, E2
  test("a linearity test tells the span, and an earlier one without it none", () => {
    const profile = balanceProfile({ balance: of, readabilityGrams, results: all, at, by });
    const loads = [20, 50, 100];
    const squares = loads.reduce((sum, grams) => sum + grams ** 2, 0);
    const slope = (of: (place: number) => number) =>
      loads.reduce((sum, grams, place) => sum + grams * of(place), 0) / squares;
    const limits = [8e-5, 1e-4, 1.6e-4];
    const u = slope((place) => Math.hypot(limits[place]! / Math.sqrt(3), 1e-4, 1e-4 / Math.sqrt(6)));
    expect(profile.span?.value).toBeCloseTo(Math.hypot(slope(() => 1e-4) / Math.sqrt(3), u), 10);
    const { spanU: _, ...earlier } = line.found;
    const before = balanceProfile({
      ...{ balance: of, readabilityGrams, at, by },
      results: [{ ...line, found: earlier }],
    });
    expect(before.span).toBeUndefined();
  });

  test("a check weight with a certificate tells the span, for a month", () => {
    const weighed = checkWeight(
      {
        weight: { nominalGrams: 100, calibrated: { conventionalGrams: 100.0002, expandedGrams: 0.00005 } },
        reading: "100.0004",
        readabilityGrams,
        repeatabilityGrams: 0.0001,
      },
      on("2026-02-20"),
    );
    const profile = balanceProfile({ balance: of, readabilityGrams, results: [weighed], at, by });
    const u = Math.hypot(2e-4 / Math.sqrt(3), 2.5e-5, 1e-4, 1e-4 / Math.sqrt(6)) / 100.0002;
    expect(profile.span?.value).toBeCloseTo(u, 12);
    const later = { balance: of, readabilityGrams, results: [weighed], at: "2026-04-01T09:00:00.000Z", by };
    expect(balanceProfile(later).span).toBeUndefined();
  });

  test("a thermometer is corrected along the line between the points where it was compared, and less sure beyond", () => {
    const beside = (celsius: number, off: number) =>
      thermometerComparison(
        {
          pairs: [0, 0, 0].map(() => ({ ownCelsius: celsius + off, referenceCelsius: celsius })),
          resolutionCelsius: 0.1,
          referenceUCelsius: 0.05,
        },
        on("2026-02-25"),
      );
    const { thermometer = [] } = balanceProfile({
      ...{ balance: of, readabilityGrams, at, by },
      results: [ice, beside(20, -0.3), beside(30, 0.1)],
    });
    const corrections = [0, 10, 20, 25, 30, 38].map((at) => correctionAt(thermometer, at)!);
    // ice: 0.4/3 too high; half-way 0.0833 to be added; at 25 °C half-way from +0.3 to −0.1
    const expected = [-0.4 / 3, (0.3 - 0.4 / 3) / 2, 0.3, 0.1, -0.1, -0.1];
    corrections.forEach(({ correctionCelsius }, i) => {
      expect(correctionCelsius).toBeCloseTo(expected[i]!, 9);
    });
    const uBeside = Math.hypot(0.1 / Math.sqrt(6), 0.05);
    // ±0.01 °C for each °C from the nearest point
    expect(corrections[4]!.uCelsius).toBeCloseTo(uBeside, 9);
    expect(corrections[5]!.uCelsius).toBeCloseTo(Math.hypot(uBeside, 0.08 / Math.sqrt(3)), 9);
    expect(corrections[3]!.uCelsius).toBeCloseTo(Math.hypot(uBeside, 0.05 / Math.sqrt(3)), 9);
  });

  test("the budget names the correction of the thermometer with its value", () => {
    const profile = balanceProfile({ balance: of, readabilityGrams, results: all, at, by });
    const { budget } = stated({
      id: "coin",
      method: "hung",
      dry: { readings: ["31.1035"] },
      immersed: { readings: ["28.1435"] },
      liquid: { kind: "water", ...temperatureAsked(profile, 21.4) },
      air: { density_kg_m3: 1.19, u_kg_m3: 0.017 },
      balance: balanceAsked(profile),
    });
    const row = (input: string) => budget.find((one) => one.input === input);
    expect(row("water temperature")).toMatchObject({ value: expect.closeTo(21.4, 9), u: 0 });
    expect(row("thermometer correction")).toMatchObject({
      value: expect.closeTo(-0.4 / 3, 9),
      u: temperatureAsked(profile, 21.4)?.temperature_u_c,
    });
  });

  test("few weighings behind a repeatability widen the interval that compute states", () => {
    const profile = balanceProfile({ balance: of, readabilityGrams, results: all, at, by });
    const { repeatability_dof: _, immersed_repeatability_dof: __, ...known } = balanceAsked(profile);
    const ask = (balance: object) =>
      stated({
        id: "coin",
        method: "hung",
        dry: { readings: ["31.1035"] },
        immersed: { readings: ["28.1435"] },
        liquid: { kind: "water", temperature_c: 21.4, temperature_u_c: 0.058 },
        air: { density_kg_m3: 1.19, u_kg_m3: 0.017 },
        balance,
      });
    const few = ask(balanceAsked(profile));
    const many = ask(known);
    expect(few.density_g_cm3).toBe(many.density_g_cm3);
    expect(few.expanded_g_cm3).toBeGreaterThan(many.expanded_g_cm3);
  });

  test("a balance nobody tested has no degrees of freedom to tell", () => {
    const profile = balanceProfile({ balance: of, readabilityGrams, results: [], at, by });
    expect(Object.keys(balanceAsked(profile))).not.toContain("repeatability_dof");
  });

  test("a profile survives the ledger: plain data in, the same data out", () => {
    const profile = balanceProfile({ balance: of, readabilityGrams, results: all, at, by });
    expect(JSON.parse(JSON.stringify(profile))).toEqual(profile);
  });
});
