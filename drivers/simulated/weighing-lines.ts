import type { MassUnit } from "../../calibration/units.ts";
import { type Display, shownIn } from "./display.ts";

export interface WeighingLinesOptions {
  /** g on the pan as the balance sees them now, its zero not yet taken off */
  panGrams(): number;
  zeroGrams(): number;
  readabilityGrams: number;
  capacityGrams: number;
  linesPerSecond: number;
  writes(display: Display): string;
}

/** The lines of a balance, one after the other: what lies on its pan, at rest once its number has kept still. */
export function createWeighingLines(options: WeighingLinesOptions) {
  const { panGrams, zeroGrams, capacityGrams, linesPerSecond, writes } = options;
  let readability = options.readabilityGrams;
  let unit: MassUnit = "g";
  let shown: number[] = [];
  return {
    next(): string {
      const grams = panGrams();
      if (grams > capacityGrams) return "overload\r\n";
      shown = [...shown, grams].slice(-Math.max(3, Math.ceil(linesPerSecond * 0.8)));
      const spread = Math.max(...shown) - Math.min(...shown);
      const stable = shown.length >= 3 && spread <= Math.max(1.5 * readability, 4 * readability * 0.6);
      return writes({ digits: shownIn(grams - zeroGrams(), unit, readability), unit, stable });
    },
    unitChange(next: MassUnit) {
      unit = next;
    },
    /** another balance, with one digit less */
    coarser() {
      readability *= 10;
    },
  };
}
