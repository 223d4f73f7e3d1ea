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

/** An odd piece nobody described is taken to be this much less dense. */
export const oddByDefault = 0.9;
