/** A half-width of more than this share of the density spans brass to gold and tells nothing. */
const widest = 1 / 3;

/** True for an interval wider than any question about a metal; density and half-width in one unit. */
export function isTooCoarse(density: number, halfWidth: number): boolean {
  return halfWidth >= widest * density;
}
