import { gramsPerUnit, type MassUnit } from "../../calibration/units.ts";

/** What the simulated balance's display shows at one moment. */
export interface Display {
  /** number as shown, decimal point, minus in front */
  digits: string;
  unit: MassUnit;
  stable: boolean;
}

/** Decimals a step shows: 0.0001 shows 4, 0.05 shows 2. */
function decimalsOf(step: number): number {
  return Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
}

/** Rounds to the display's step: the readability in g, a power of ten no finer than it in other units. */
export function shownIn(grams: number, unit: MassUnit, readabilityGrams: number): string {
  const perUnit = Number(gramsPerUnit[unit]);
  const decimals =
    unit === "g"
      ? decimalsOf(readabilityGrams)
      : Math.max(0, Math.floor(-Math.log10(readabilityGrams / perUnit) + 1e-9));
  const step = unit === "g" ? readabilityGrams : 10 ** -decimals;
  const text = (Math.round(grams / perUnit / step) * step).toFixed(decimals);
  return /[1-9]/.test(text) ? text : text.replace("-", "");
}

/** The line the simulated balance sends unless told otherwise: number, unit, and a plain word about rest. */
export function plainLine({ digits, unit, stable }: Display): string {
  return `${digits.padStart(12)} ${unit.padEnd(3)} ${stable ? "stable" : "moving"}\r\n`;
}
