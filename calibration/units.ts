import { lastPlace, times } from "./decimal.ts";
import { keysOf } from "./keyed.ts";

/**
 * Units of mass a reading may carry, each in grams, exact by definition.
 * lb = 453.592 37 g by the 1959 agreement (24 FR 5348); gn = lb/7000, dwt = 24 gn, ozt = 480 gn, oz = lb/16:
 * NIST SP 811 (2008) appendix B.8 [clause from memory]; ct = 0.2 g, metric carat, 4th CGPM 1907.
 */
export const gramsPerUnit = {
  g: "1",
  kg: "1000",
  mg: "0.001",
  ct: "0.2",
  ozt: "31.1034768",
  dwt: "1.55517384",
  gn: "0.06479891",
  oz: "28.349523125",
} as const;

export type MassUnit = keyof typeof gramsPerUnit;

/** The units in the order a page lists them. */
export const massUnits = keysOf(gramsPerUnit);

/** True when the text names one of the known units of mass. */
export function isMassUnit(text: string): text is MassUnit {
  return Object.hasOwn(gramsPerUnit, text);
}

/**
 * A reading in its unit as exact decimal text in grams. A reading in g comes back unchanged, trailing zeros and all.
 * Throws TypeError when the text is no decimal number.
 */
export function toGrams(text: string, unit: MassUnit): string {
  return unit === "g" ? text : times(text, gramsPerUnit[unit]);
}

/**
 * One step of the last decimal that a reading shows, in g: 8.295 dwt steps by 0.001 dwt, which is 0.00156 g. Throws
 * TypeError when the text is no decimal number.
 */
export function stepGrams(text: string, unit: MassUnit): number {
  return lastPlace(text) * Number(gramsPerUnit[unit]);
}
