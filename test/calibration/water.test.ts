import { describe, expect, it } from "vitest";
import { plain } from "../../calibration/arithmetic.ts";
import {
  dissolvedAirShift,
  waterCompressibility,
  waterDensityKgPerM3,
  waterRange,
} from "../../calibration/water.ts";
import tanaka from "./published/water-tanaka-2001.json" with { type: "json" };

describe("water", () => {
  it("follows Tanaka's table at every whole degree from 0 to 40 °C", () => {
    expect(tanaka.density).toHaveLength(41);
    // half a unit of the last printed digit is 5e-5
    tanaka.density.forEach((kgPerM3, celsius) => {
      expect(Math.abs(waterDensityKgPerM3(celsius) - kgPerM3), `${celsius} °C`).toBeLessThan(5.01e-5);
    });
  });

  it("gives the value at 25 °C that a public implementation of the same paper carries in its tests", () => {
    // chempy, unit test of water_density: 298.15 K
    expect(waterDensityKgPerM3(25)).toBeCloseTo(997.047021671824, 9);
  });

  it("is heaviest at 3.983035 °C, where it is a5", () => {
    expect(waterDensityKgPerM3(3.983035)).toBe(999.97495);
  });

  it("answers at both ends of its range and refuses beyond them with the range and a remedy", () => {
    expect(waterDensityKgPerM3(waterRange.from)).toBeGreaterThan(999);
    expect(waterDensityKgPerM3(waterRange.to)).toBeLessThan(993);
    expect(() => waterDensityKgPerM3(-0.01)).toThrow(
      expect.objectContaining({
        code: "measurement.water-range",
        params: expect.objectContaining({ celsius: -0.01, from: 0, to: 40, side: "cold" }),
      }),
    );
    expect(() => waterDensityKgPerM3(70)).toThrow(
      expect.objectContaining({
        code: "measurement.water-range",
        params: expect.objectContaining({ celsius: 70, side: "warm" }),
      }),
    );
    expect(() => waterDensityKgPerM3(Number.NaN)).toThrow(
      expect.objectContaining({ code: "measurement.water-range" }),
    );
  });

  it("loses what Bignell's line says when air dissolves in it", () => {
    // Bignell 1983, Metrologia 19, 57: −4.612e-3 + 0.106e-3·t, so −0.002492 at 20 °C
    expect(dissolvedAirShift(plain, 20)).toBeCloseTo(-0.002492, 9);
    // the two air-free and air-saturated fits of Jones & Harris 1992 differ by the same: 998.203255 − 998.200771 at 20 °C
    expect(dissolvedAirShift(plain, 20)).toBeCloseTo(998.200771 - 998.203255, 4);
  });

  it("is squeezed as much as IAPWS-95 says, which settles the misprinted coefficient", () => {
    // IAPWS-95 and TEOS-10, numeric: 4.9162e-10 at 5, 4.5886e-10 at 20, 4.4232e-10 at 40 °C; Tanaka's fit is good to 0.3 %
    for (const [celsius, perPascal] of [
      [5, 4.9162e-10],
      [20, 4.5886e-10],
      [40, 4.4232e-10],
    ] as const)
      expect(Math.abs(waterCompressibility(celsius) / perPascal - 1)).toBeLessThan(3e-3);
  });
});
