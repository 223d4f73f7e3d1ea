import { Refusal } from "../../../calibration/refusal.ts";
import type { PermilleRange } from "./fineness.ts";

/** Mass of the precious metal alone, g. */
export interface FineMass {
  lowG: number;
  highG: number;
}

/**
 * Fine mass of a piece: its mass interval times its fineness interval, end by end, since the freedom of the alloy is no
 * random error that could be added in squares. Masses in grams. Refuses a mass that is not above zero.
 */
export function fineMass(massG: number, expandedUMassG: number, fineness: PermilleRange): FineMass {
  if (!(massG > 0)) throw new Refusal("fineness.refusal.mass", { mass_g: massG });
  const lowG = ((massG - expandedUMassG) * fineness.low) / 1000;
  const highG = ((massG + expandedUMassG) * fineness.high) / 1000;
  return { lowG, highG };
}
