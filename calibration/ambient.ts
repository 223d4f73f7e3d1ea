import {
  airDensityByAltitudeKgPerM3,
  airDensityKgPerM3,
  airRange,
  altitudeHalfWidth,
  checkAir,
  pressureByAltitudeHpa,
} from "./air.ts";
import type { Input, Inputs } from "./input.ts";

/** The air around the balance, as far as somebody knows it. */
export type Ambient =
  | { kind: "stated"; kgPerM3: number; uKgPerM3: number }
  | {
      kind: "measured";
      celsius: number;
      hectopascals: number;
      percentHumidity: number;
      uCelsius?: number;
      uHectopascals?: number;
      uPercentHumidity?: number;
    }
  | { kind: "altitude"; metres: number };

/** Ordinary room instruments, standard uncertainties (common practice). */
const ambientU = { celsius: 0.5, hectopascals: 1, percentHumidity: 5 } as const;

/** Pressure over the liquid when nobody told, hPa. */
const standardPressure = 1013.25;

/** Air density as one named input, and the pressure it implies in hPa. Throws Refusal outside the ranges of air.ts. */
export function ambientIn(inputs: Inputs, ambient: Ambient): { kgPerM3: Input; hectopascals: number } {
  const name = "air density";
  if (ambient.kind === "stated") {
    // 0: air neglected, as in exercises of textbooks
    if (ambient.kgPerM3 !== 0) checkAir(ambient.kgPerM3, airRange.kgPerM3, "kg-per-m3");
    return {
      kgPerM3: inputs.normal(name, "kg/m³", ambient.kgPerM3, ambient.uKgPerM3),
      hectopascals: standardPressure,
    };
  }
  if (ambient.kind === "altitude") {
    const kgPerM3 = airDensityByAltitudeKgPerM3(ambient.metres);
    return {
      kgPerM3: inputs.rectangular(name, "kg/m³", kgPerM3, kgPerM3 * altitudeHalfWidth),
      hectopascals: pressureByAltitudeHpa(ambient.metres),
    };
  }
  const { celsius: t, hectopascals: p, percentHumidity: h } = ambient;
  const kgPerM3 = airDensityKgPerM3(t, p, h);
  // slopes over steps that stay inside the ranges; the formula is nearly straight over them
  const step = (at: number, by: number, most: number) => (at + by > most ? -by : by);
  const dt = step(t, 0.1, 40);
  const dp = step(p, 0.1, 1100);
  const dh = step(h, 0.1, 100);
  const parts = [
    ((airDensityKgPerM3(t + dt, p, h) - kgPerM3) / dt) * (ambient.uCelsius ?? ambientU.celsius),
    ((airDensityKgPerM3(t, p + dp, h) - kgPerM3) / dp) * (ambient.uHectopascals ?? ambientU.hectopascals),
    ((airDensityKgPerM3(t, p, h + dh) - kgPerM3) / dh) *
      (ambient.uPercentHumidity ?? ambientU.percentHumidity),
    22e-6 * kgPerM3,
  ];
  return { kgPerM3: inputs.normal(name, "kg/m³", kgPerM3, Math.hypot(...parts)), hectopascals: p };
}
