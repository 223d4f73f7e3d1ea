import type { Param } from "../../../calibration/message.ts";

/** What a piece is meant to be: mass, fineness and size, with the tolerances its law or its owner sets. */
export interface Specification {
  id: string;
  /** its name for a message */
  called: Param;
  /** id of the metal in the library it is meant to be made of */
  metal: string;
  massG: number;
  /** largest departure of one piece's mass when made, g; null when the source states none */
  massToleranceG: number | null;
  /** lightest mass at which it still passed as current, g, where a law sets one */
  leastCurrentG?: number;
  finenessPermille: number;
  finenessTolerancePermille: number | null;
  diameterMm?: number;
  thicknessMm?: number;
  source: string;
  /** true when mass and fineness were seen in the source named; sizes may still be from memory, see the source */
  verified: boolean;
}

/**
 * Thickness an even disc of the mass, density and diameter would have, mm. Always less than the rim of a coin with
 * relief: a rim thinner than this cannot be right.
 */
export function effectiveThicknessMm(massG: number, gPerCm3: number, diameterMm: number): number {
  return (massG / gPerCm3) * 1000 * (4 / (Math.PI * diameterMm ** 2));
}
