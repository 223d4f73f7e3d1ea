import { Refusal } from "./refusal.ts";

/** Where the air formula is used here; its authors vouch for 15–27 °C and 600–1100 hPa [ranges from memory]. */
export const airRange = {
  celsius: { from: 0, to: 40, vouchedFrom: 15, vouchedTo: 27 },
  hectopascals: { from: 500, to: 1100, vouchedFrom: 600, vouchedTo: 1100 },
  percentHumidity: { from: 0, to: 100 },
  metres: { from: -400, to: 5000 },
  /** from thin air at 5000 m and 40 °C to dense air at 1100 hPa and −20 °C, by the ideal gas law */
  kgPerM3: { from: 0.5, to: 1.6 },
} as const;

type Quantity = "celsius" | "hectopascals" | "humidity" | "metres" | "kg-per-m3";

const keys: Readonly<Record<Quantity, string>> = {
  celsius: "air.temperature_c",
  hectopascals: "air.pressure_hpa",
  humidity: "air.humidity_pct",
  metres: "air.altitude_m",
  "kg-per-m3": "air.density_kg_m3",
};

/** Throws Refusal for a value of the air outside its range, at its key of a compute request. */
export function checkAir(
  value: number,
  { from, to }: { from: number; to: number },
  quantity: Quantity,
): void {
  if (!(value >= from && value <= to))
    throw new Refusal("measurement.air-range", { quantity, value, from, to }, keys[quantity]);
}

/**
 * Density of moist air, kg/m³, CIPM-2007: Picard, Davis, Gläser, Fujii 2008, Metrologia 45, 149–155, with 400 ppm CO₂.
 * celsius 0–40 °C, hectopascals 500–1100 hPa (pressure at the bench, not reduced to sea level), percentHumidity
 * 0–100 %. Throws Refusal outside. Relative standard uncertainty of the formula 22e-6 [from memory] in its range.
 */
export function airDensityKgPerM3(celsius: number, hectopascals: number, percentHumidity: number): number {
  checkAir(celsius, airRange.celsius, "celsius");
  checkAir(hectopascals, airRange.hectopascals, "hectopascals");
  checkAir(percentHumidity, airRange.percentHumidity, "humidity");
  const t = celsius;
  const kelvin = celsius + 273.15;
  const p = hectopascals * 100;
  const molarAir = 28.96546e-3; // kg/mol at x(CO₂) = 0.0004
  const molarWater = 18.01528e-3;
  const gasConstant = 8.314472; // CODATA 2006, the one the formula was fitted with
  const enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t;
  const saturation = Math.exp(
    1.2378847e-5 * kelvin * kelvin - 1.9121316e-2 * kelvin + 33.93711047 - 6.3431645e3 / kelvin,
  );
  const vapour = ((percentHumidity / 100) * enhancement * saturation) / p;
  const perKelvin = p / kelvin;
  const compressibility =
    1 -
    perKelvin *
      (1.58123e-6 -
        2.9331e-8 * t +
        1.1043e-10 * t * t +
        (5.707e-6 - 2.051e-8 * t) * vapour +
        (1.9898e-4 - 2.376e-6 * t) * vapour * vapour) +
    perKelvin * perKelvin * (1.83e-11 - 0.765e-8 * vapour * vapour);
  return (
    ((p * molarAir) / (compressibility * gasConstant * kelvin)) * (1 - vapour * (1 - molarWater / molarAir))
  );
}

/**
 * Density of air by height above the sea, kg/m³, when nobody has a barometer: 1.2·exp(−1.2·g·h/101325).
 * OIML R 111-1:2004, E.3-2, metres −400 to 5000 m. Throws Refusal outside. Weather and room temperature move the
 * true value by about ±5 % (common practice).
 */
export function airDensityByAltitudeKgPerM3(metres: number, gravity = 9.81): number {
  checkAir(metres, airRange.metres, "metres");
  return 1.2 * Math.exp((-1.2 * gravity * metres) / 101325);
}

/** Half-width, as a share, of what weather and room temperature do to the air density of a place. */
export const altitudeHalfWidth = 0.05;

/** Air pressure to expect at a height, hPa: the same exponential as the density. */
export function pressureByAltitudeHpa(metres: number): number {
  return (1013.25 * airDensityByAltitudeKgPerM3(metres)) / 1.2;
}
