/**
 * How many of n like pieces weighed together must be of another density before their mean leaves the interval: equal
 * masses, so volumes add. Densities and half-width in g/cm³. Null when not even all of them would show.
 */
export function oddPiecesSeen(
  pieces: number,
  claimedGPerCm3: number,
  otherGPerCm3: number,
  expandedGPerCm3: number,
): number | null {
  for (let odd = 1; odd <= pieces; odd++) {
    const mean = pieces / (odd / otherGPerCm3 + (pieces - odd) / claimedGPerCm3);
    if (Math.abs(mean - claimedGPerCm3) > expandedGPerCm3) return odd;
  }
  return null;
}
