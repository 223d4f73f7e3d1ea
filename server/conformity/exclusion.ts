import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import type { DensityBand, Metal } from "../metals/metal.ts";

/** Reference temperature of every band in the library, °C. */
const bandCelsius = 20;

/**
 * The metal's band at another temperature, g/cm³: ρ(t) = ρ(20) / (1 + 3α(t − 20)). An unknown expansion leaves it as it
 * is; at 25 °C that costs at most 0.05 % for the most expanding metal of the library.
 */
export function bandAt(metal: Metal, celsius: number): DensityBand {
  const { nominal, low, high } = metal.densityGPerCm3;
  const grown = 1 + 3 * (metal.expansionPerMillionK ?? 0) * 1e-6 * (celsius - bandCelsius);
  return { nominal: nominal / grown, low: low / grown, high: high / grown };
}

/** So near an end of the interval, in parts of its width, only the distribution itself says on which side a band lies. */
const nearEnd = 0.05;

/**
 * True when the measured distribution lies beside the band at the confidence: less than half the remaining probability
 * (1 − confidence)/2 reaches it from either side. The same as "the coverage interval does not touch the band".
 */
export function excludes(measured: MeasuredDensity, band: DensityBand, confidence: number): boolean {
  const [from, to] = measured.intervalGPerCm3;
  const near = (to - from) * nearEnd;
  if (confidence === measured.confidence) {
    // clearly beside the coverage interval or within it: the distribution need not be asked
    if (band.high < from - near || band.low > to + near) return true;
    if (band.high > from + near && band.low < to - near) return false;
  }
  const tail = (1 - confidence) / 2;
  return measured.probabilityBelow(band.high) < tail || measured.probabilityBelow(band.low) > 1 - tail;
}

/** How far the value lies outside the band, g/cm³; 0 inside it. */
export function distanceTo(band: DensityBand, gPerCm3: number): number {
  return Math.max(band.low - gPerCm3, gPerCm3 - band.high, 0);
}
