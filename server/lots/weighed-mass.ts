import { lastPlace } from "../../calibration/decimal.ts";
import { isMassUnit, stepGrams } from "../../calibration/units.ts";

/** A dry mass as a display showed it, with the density found: what tells one piece from another. */
export interface WeighedMass {
  ticket: string;
  /** the lot it lies in, where it is another one */
  elsewhere?: { lot: string };
  dryG: number;
  /** one step of the display, g */
  stepG: number;
  /** g/cm³, with its expanded uncertainty; null where the readings are those of no density */
  density: { value: number; expanded: number } | null;
}

/** One step of the display in g; the grams of a reading in another unit carry decimals that it never showed. */
export function displayStepG({ text, unit, grams }: { text: string; unit: string; grams: string }): number {
  return isMassUnit(unit) ? stepGrams(text, unit) : lastPlace(grams);
}
