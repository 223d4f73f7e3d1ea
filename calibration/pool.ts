/**
 * How many odd pieces among `pieces` of equal mass the mean of a pool would hide: the largest number whose presence moves
 * the mean density by no more than the expanded uncertainty. Densities in g/cm³; volumes add up, so it is 1/ρ that is
 * averaged. 0 when even one would show.
 */
export function wouldHide(
  { gPerCm3, expandedGPerCm3 }: { gPerCm3: number; expandedGPerCm3: number },
  pieces: number,
  oddGPerCm3: number,
): number {
  let hidden = 0;
  for (let odd = 1; odd < pieces; odd++) {
    const mean = pieces / ((pieces - odd) / gPerCm3 + odd / oddGPerCm3);
    if (Math.abs(mean - gPerCm3) > expandedGPerCm3) break;
    hidden = odd;
  }
  return hidden;
}

/**
 * How many odd pieces among `pieces` of equal mass could hide where the others may lie anywhere in a band: the largest
 * number for which some density of the others makes the mean that was measured, within its expanded uncertainty. g/cm³.
 */
export function couldHide(
  { gPerCm3, expandedGPerCm3 }: { gPerCm3: number; expandedGPerCm3: number },
  pieces: number,
  oddGPerCm3: number,
  band: { lowGPerCm3: number; highGPerCm3: number },
): number {
  const mean = (odd: number, others: number) => pieces / ((pieces - odd) / others + odd / oddGPerCm3);
  let hidden = 0;
  for (let odd = 1; odd < pieces; odd++) {
    const reaches =
      mean(odd, band.highGPerCm3) >= gPerCm3 - expandedGPerCm3 &&
      mean(odd, band.lowGPerCm3) <= gPerCm3 + expandedGPerCm3;
    if (reaches) hidden = odd;
  }
  return hidden;
}

/** An odd piece nobody described is taken to be this much less dense. */
export const oddByDefault = 0.9;
