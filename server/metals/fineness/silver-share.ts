import { mixtureDensity } from "../mixture.ts";

/** How silver and copper share what is not gold. */
export interface SilverShare {
  /** silver's part of the rest by mass; below 0 or above 1 where no split of the two gives this density */
  share: number;
  /** standard uncertainty of the share: from the density, the assay and the mixture law, in squares */
  u: number;
}

export interface AssayedMelt {
  /** gold by the laboratory, mass fraction above 0 and below 1, with its standard uncertainty */
  gold: number;
  uGold: number;
  /** density at 20 °C, g/cm³, with its standard uncertainty */
  gPerCm3: number;
  uGPerCm3: number;
}

/** The specific volume of gold with a rest of silver and copper, cm³/g, and its uncertainty by the law alone. */
function volumeOf(gold: number, silver: number): { cm3PerG: number; u: number } {
  const rest = 1 - gold;
  const density = mixtureDensity({ Au: gold, Ag: rest * silver, Cu: rest * (1 - silver) });
  return {
    cm3PerG: 1 / density.correctedGPerCm3,
    u: density.uGPerCm3 / density.correctedGPerCm3 ** 2,
  };
}

/**
 * Silver's share of the silver and copper in a melt that reproduces its density with the gold the laboratory found, by
 * the law with excess terms of `mixtureDensity`. At given gold that law is straight in the share on specific volume
 * (its silver-copper term is nought), so the share follows from the two ends, and goes on straight beyond them: what
 * lies beyond 0 or 1 tells by how much no split will do. Zinc counts as more copper. Throws RangeError for gold outside
 * 0 to 1, ends excluded, since fine gold has no rest to share out.
 */
export function silverShare({ gold, uGold, gPerCm3, uGPerCm3 }: AssayedMelt): SilverShare {
  if (!(gold > 0 && gold < 1))
    throw new RangeError(
      `Mass fraction ${gold} of gold: right is above 0 and below 1, so that there is a rest.`,
    );
  const [copper, silver] = [volumeOf(gold, 0).cm3PerG, volumeOf(gold, 1).cm3PerG];
  const share = (1 / gPerCm3 - copper) / (silver - copper);
  const held = Math.min(1, Math.max(0, share));
  const step = Math.min(0.001, gold / 2, (1 - gold) / 2);
  const perGold = (volumeOf(gold + step, held).cm3PerG - volumeOf(gold - step, held).cm3PerG) / (2 * step);
  const uVolume = Math.hypot(uGPerCm3 / gPerCm3 ** 2, volumeOf(gold, held).u, perGold * uGold);
  return { share, u: uVolume / Math.abs(silver - copper) };
}

/** A share less certain than this, one standard uncertainty, is no evidence of a split: near fine gold there is hardly a rest. */
const leastKnown = 0.25;

/** True when a share is known well enough to say anything. */
export function isCertain({ u }: SilverShare): boolean {
  return u <= leastKnown;
}

/** True when a melt tells a split: known well enough, and one of silver and copper within twice its uncertainty. */
export function tellsSplit(split: SilverShare): boolean {
  const { share, u } = split;
  return isCertain(split) && share >= -2 * u && share <= 1 + 2 * u;
}
