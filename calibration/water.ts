import { type Arithmetic, plain, polynomial } from "./arithmetic.ts";
import { Refusal } from "./refusal.ts";

/** Where the water formula holds, °C. The check, its message and the pages all read it here. */
export const waterRange = { from: 0, to: 40 } as const;

/**
 * Density of air-free water of ocean isotopic composition at 101 325 Pa, kg/m³, t in °C (ITS-90), 0–40 °C.
 * ρ = a5·[1 − (t + a1)²·(t + a2)/(a3·(t + a4))]
 * Tanaka, Girard, Davis, Peuto, Bignell 2001, Metrologia 38, 301–309.
 */
export function waterFormula<N>(a: Arithmetic<N>, celsius: N): N {
  const fromMaximum = a.plus(celsius, a.of(-3.983035));
  const above = a.times(a.times(fromMaximum, fromMaximum), a.plus(celsius, a.of(301.797)));
  const below = a.times(a.of(522528.9), a.plus(celsius, a.of(69.34881)));
  return a.times(a.of(999.97495), a.minus(a.of(1), a.over(above, below)));
}

/**
 * Change of density when the water is saturated with air, kg/m³ (negative), t in °C.
 * Bignell 1983, Metrologia 19, 57, fitted for 0–25 °C. The line crosses zero at 43.5 °C; from 25 to
 * 40 °C it is less than 0.002 kg/m³ in size, so its use there costs at most 2 parts in a million.
 */
export function dissolvedAirShift<N>(a: Arithmetic<N>, celsius: N): N {
  return polynomial(a, celsius, [-4.612e-3, 0.106e-3]);
}

/**
 * Isothermal compressibility of water, 1/Pa, t in °C, 0–40 °C.
 * Tanaka et al. 2001, same paper; k2 checked against IAPWS-95 because copies of it differ by a factor of ten.
 */
export function waterCompressibility(celsius: number): number {
  return polynomial(plain, celsius, [50.74e-11, -0.326e-11, 0.00416e-11]);
}

/**
 * Rise of density per mass concentration of dissolved salts, kg/m³ per g/L, near 20 °C and below 1 g/L.
 * TEOS-10 for sea salt gives 0.761; hard tap water is a little heavier per gram, so the composition is worth ±15 %
 * of the correction (common practice).
 */
export const risePerSolids = 0.761;
export const solidsCompositionHalfWidth = 0.15;

/**
 * Standard uncertainty of the formula in ordinary use, kg/m³: the formula itself 0.0004 (Tanaka et al. 2001, U/2),
 * isotopes of fresh water up to −0.003, and air pressure of the place when it is not told.
 */
export const waterFormulaU = 0.005;

/** Throws Refusal unless the water is between 0 and 40 °C. */
export function checkWaterRange(celsius: number): void {
  if (!(celsius >= waterRange.from && celsius <= waterRange.to))
    throw new Refusal(
      "measurement.water-range",
      { celsius, from: waterRange.from, to: waterRange.to, side: celsius > waterRange.to ? "warm" : "cold" },
      "liquid.temperature_c",
    );
}

/**
 * Density of air-free water at 101 325 Pa, kg/m³, for 0–40 °C (see waterFormula). Throws Refusal outside.
 * @example waterDensityKgPerM3(20) // 998.2067
 */
export function waterDensityKgPerM3(celsius: number): number {
  checkWaterRange(celsius);
  return waterFormula(plain, celsius);
}
