import { describe, expect, it } from "vitest";
import { dimensions, type Length, type MeasuredBody } from "../../calibration/dimensions.ts";
import { measure } from "../../calibration/measure.ts";
import type { Measurement } from "../../calibration/measurement.ts";
import { seededRandom } from "../../calibration/random.ts";

const length = (...readings: string[]): Length => ({ readings, uMm: 0.02 });
const weighed = (body: MeasuredBody, dry: string): Measurement => ({
  dry: { readings: [dry], unit: "g" },
  weighing: dimensions(body),
  liquid: { kind: "none", temperature: { celsius: 20, uCelsius: 2 } },
  air: { kind: "stated", kgPerM3: 1.2, uKgPerM3: 0.02 },
  balance: { readabilityGrams: 0.01, repeatabilityGrams: 0.01, linearityGrams: 0 },
  hanger: { wireMillimetres: 0 },
  bubbleAllowanceMg: 0,
  pieces: 1,
  confidence: 0.9545,
});
const bar: MeasuredBody = {
  solid: "box",
  lengths: { length: length("80.00"), width: length("40.00"), height: length("16.20") },
  formPercent: 0,
  formHalfWidthPercent: 0.5,
};
const of = (solid: MeasuredBody["solid"], lengths: MeasuredBody["lengths"]): MeasuredBody => ({
  solid,
  lengths,
  formPercent: 0,
  formHalfWidthPercent: 0.1,
});

// Invented pieces. Values worked out apart from this program with mpmath at 30 digits:
// ρ = R(1 − ρa/8)/V + ρa (the air's pull on piece and weights, as OIML R 111-1:2004 takes it), ρa = 0.0012 g/cm³.
describe("density from dimensions", () => {
  it("of a bar of 80 × 40 × 16.2 mm and 1000 g is 19.28842993827…", () => {
    const result = measure(weighed(bar, "1000.00"));
    expect(result.volumeCm3).toBeCloseTo(51.84, 12);
    expect(result.gPerCm3).toBeCloseTo(19.288429938271605, 12);
    expect(result.liquidGPerCm3).toBeNull();
  });

  it("adds its contributions as by hand: calibration on all lengths together, the rest in squares", () => {
    const result = measure(weighed(bar, "1000.00"));
    const lengths = [80, 40, 16.2];
    const calibration = 0.02 * lengths.reduce((sum, mm) => sum + 1 / mm, 0);
    const step = lengths.map((mm) => 0.01 / mm);
    const relative = Math.hypot(
      calibration,
      ...step,
      ...step.map((one) => one / Math.sqrt(12)),
      0.005 / Math.sqrt(3),
      Math.hypot(0.01, 0.01 / Math.sqrt(6)) / 1000,
    );
    expect(relative).toBeCloseTo(0.0035734280371385, 12);
    // the air density's own part, 0.00002·(1 − ρ/8), is a hundred-thousandth of it
    expect(result.uGPerCm3 / (relative * (result.gPerCm3 - 0.0012))).toBeCloseTo(1, 6);
  });

  it("of a disc with relief takes the stated part of the volume away", () => {
    const disc: MeasuredBody = {
      solid: "disc",
      lengths: { diameter: length("38.60", "38.61", "38.60", "38.62"), thickness: length("2.98") },
      formPercent: -12,
      formHalfWidthPercent: 4,
    };
    const result = measure(weighed(disc, "31.1035"));
    expect(result.volumeCm3).toBeCloseTo(3.069956189526802, 12);
    expect(result.gPerCm3).toBeCloseTo(10.13125807089173, 11);
    const form = result.budget.find(({ input }) => input === "form of the piece")!;
    // 4 % of the plain volume (π/4)·38.6075²·2.98 mm³, rectangular
    expect(form.u).toBeCloseTo((0.04 * 3.488586579007729) / Math.sqrt(3), 9);
    expect(form.share).toBeGreaterThan(0.8);
    // four readings carry their own scatter: s = 0.00957 mm, over √4, three degrees of freedom
    const diameter = result.budget.find(({ input }) => input === "diameter, repeatability")!;
    expect(diameter.u).toBeCloseTo(0.0047871355, 9);
    expect(diameter.dof).toBe(3);
  });

  it("of a tube is that of the cylinder less its bore, and a solid rod's where the wall is the radius' own", () => {
    const tube = of("tube", { diameter: length("20.00"), wall: length("1.50"), length: length("30.00") });
    // (π/4)(20² − 17²)·30 mm³
    expect(measure(weighed(tube, "20.00")).volumeCm3).toBeCloseTo(
      ((Math.PI / 4) * (400 - 289) * 30) / 1000,
      10,
    );
    const rod = of("cylinder", { diameter: length("20.00"), height: length("30.00") });
    expect(measure(weighed(rod, "20.00")).volumeCm3).toBeCloseTo((Math.PI * 100 * 30) / 1000, 10);
  });

  it("is taken to 20 °C by the expansion of the piece", () => {
    const warm = measure({
      ...weighed(bar, "1000.00"),
      liquid: { kind: "none", temperature: { celsius: 30, uCelsius: 0.5 } },
      linearExpansionPerCelsius: 14.2e-6, // gold, CRC Handbook [from memory]
    });
    expect(warm.gPerCm3At20 / warm.gPerCm3).toBeCloseTo(1 + 3 * 14.2e-6 * 10, 12);
  });

  it("keeps the balance's span error, since nothing cancels it here", () => {
    const given = weighed(bar, "1000.00");
    const result = measure({ ...given, balance: { ...given.balance, spanU: 1e-3 } });
    const span = result.budget.find(({ input }) => input === "balance span")!;
    expect(span.contributionGPerCm3 / result.gPerCm3).toBeCloseTo(1e-3, 6);
  });

  it("quotes by Monte Carlo little more than the half-width where form rules", () => {
    const result = measure(weighed({ ...bar, formHalfWidthPercent: 3 }, "1000.00"), seededRandom(7));
    const [low, high] = result.intervalGPerCm3;
    // a rectangular ±3 % holds 95.45 % within ±2.86 %; the rest of the budget, 0.2 %, widens it little
    expect((high - low) / 2 / result.gPerCm3).toBeGreaterThan(0.0286);
    expect((high - low) / 2 / result.gPerCm3).toBeLessThan(0.03);
    expect(result.intervalFrom).toBe("monte-carlo");
  });

  it.each([
    ["0", "dimensions.not-above-zero", { mm: { decimal: "0" } }],
    ["-3.1", "dimensions.not-above-zero", { mm: { decimal: "-3.1" } }],
    ["10.00", "dimensions.wall-beyond-radius", { wall_mm: 10, radius_mm: 10 }],
    ["11.00", "dimensions.wall-beyond-radius", { wall_mm: 11, radius_mm: 10 }],
  ])("refuses a wall of %s mm in a tube of 20 mm", (wall, code, params) => {
    const tube = of("tube", { diameter: length("20.00"), wall: length(wall), length: length("30.00") });
    expect(() => dimensions(tube)).toThrow(
      expect.objectContaining({ code, at: "dimensions.wall_mm", params: expect.objectContaining(params) }),
    );
  });

  it("refuses a length that is missing", () => {
    expect(() => dimensions(of("disc", { diameter: length("20.00") }))).toThrow(
      expect.objectContaining({ code: "dimensions.missing", at: "dimensions.thickness_mm" }),
    );
  });
});
