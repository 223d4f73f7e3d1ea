import { describe, expect, it } from "vitest";
import { airDensityByAltitudeKgPerM3, airDensityKgPerM3 } from "../../calibration/air.ts";

// Computed once in double precision from the constants of Picard et al. 2008 with a separate script; the published
// points stand in a test of their own below.
const cipm = [
  [20, 1013.25, 50, 1.1993139],
  [20, 1000, 50, 1.1835566],
  [15, 1013.25, 50, 1.2216312],
  [25, 1013.25, 50, 1.1773154],
  [22, 990, 40, 1.164198],
  [27, 1100, 80, 1.2646581],
  [15, 600, 20, 0.7240188],
  [18, 830, 30, 0.9906408],
  [20, 1013.25, 0, 1.2045573],
  [20, 1013.25, 100, 1.1940872],
] as const;

describe("air", () => {
  it("follows CIPM-2007 to a part in a million", () => {
    for (const [celsius, hpa, percent, kgPerM3] of cipm)
      expect(Math.abs(airDensityKgPerM3(celsius, hpa, percent) / kgPerM3 - 1)).toBeLessThan(1e-6);
  });

  it("gives the air densities printed in a public manual and vignette on mass calibration", () => {
    // R package masscor, manual: 20 °C, 1013.25 hPa, 50 %; vignette: 21.5 °C, 751 hPa, 58.1 %; all printed digits
    expect(airDensityKgPerM3(20, 1013.25, 50)).toBeCloseTo(1.199314, 6);
    expect(airDensityKgPerM3(21.5, 751, 58.1)).toBeCloseTo(0.8815079, 7);
  });

  it("stays near the simple formula of OIML R 111, which is good to 3 parts in 10 000", () => {
    // OIML R 111-1:2004, E.3-1
    const simple = (t: number, p: number, h: number) =>
      (0.34848 * p - 0.009 * h * Math.exp(0.061 * t)) / (273.15 + t);
    for (const t of [15, 20, 27])
      for (const h of [20, 50, 79])
        expect(Math.abs(airDensityKgPerM3(t, 1000, h) / simple(t, 1000, h) - 1)).toBeLessThan(3e-4);
  });

  it("is close to NIST SOP 2's worked example, which uses another formula", () => {
    // NIST SOP 2, appendix B, example 3: 23.4 °C, 612.3 mmHg, 23 %: 0.95632 mg/cm³; the formulas differ by 2.4e-5
    expect(Math.abs(airDensityKgPerM3(23.4, 612.3 * 1.33322387415, 23) / 0.95632 - 1)).toBeLessThan(4e-5);
  });

  it("thins with height as OIML R 111 E.3-2 says", () => {
    // R package masscor, vignette: 2640 m with g = 9.8
    expect(airDensityByAltitudeKgPerM3(2640, 9.8)).toBeCloseTo(0.8833069, 7);
    expect(airDensityByAltitudeKgPerM3(0)).toBe(1.2);
    expect(airDensityByAltitudeKgPerM3(1600)).toBeCloseTo(0.9964389, 7);
  });

  it("refuses pressure in other units, humidity beyond 100 % and heights beyond any town", () => {
    expect(() => airDensityKgPerM3(20, 101325, 50)).toThrow(
      expect.objectContaining({
        code: "measurement.air-range",
        params: expect.objectContaining({ quantity: "hectopascals", value: 101325, from: 500, to: 1100 }),
        at: "air.pressure_hpa",
      }),
    );
    expect(() => airDensityKgPerM3(20, 1013, 101)).toThrow(
      expect.objectContaining({
        code: "measurement.air-range",
        params: expect.objectContaining({ quantity: "humidity", value: 101 }),
        at: "air.humidity_pct",
      }),
    );
    expect(() => airDensityByAltitudeKgPerM3(9000)).toThrow(
      expect.objectContaining({
        code: "measurement.air-range",
        params: expect.objectContaining({ quantity: "metres", value: 9000 }),
        at: "air.altitude_m",
      }),
    );
  });
});
