import type { PermilleRange } from "./fineness.ts";

/** Mass of the precious metal alone, g. */
export interface FineMass {
  lowG: number;
  highG: number;
  says: string;
}

/**
 * Fine mass of a piece: its mass interval times its fineness interval, end by end, since the freedom of the alloy is no
 * random error that could be added in squares. Masses in grams. Throws RangeError for a mass that is not above zero.
 */
export function fineMass(massG: number, expandedUMassG: number, fineness: PermilleRange): FineMass {
  if (!(massG > 0)) throw new RangeError(`Mass ${massG} g: right is the dry mass of the piece, above zero.`);
  const lowG = ((massG - expandedUMassG) * fineness.low) / 1000;
  const highG = ((massG + expandedUMassG) * fineness.high) / 1000;
  return { lowG, highG, says: `Between ${lowG.toFixed(2)} and ${highG.toFixed(2)} g of fine metal.` };
}
