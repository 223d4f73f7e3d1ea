import { mixtureDensity } from "../mixture.ts";
import type { RestOfAlloy } from "./rest-of-alloy.ts";

export type Law = "plain" | "corrected";

/** The alloy with a mass fraction w of the precious metal and the rest shared out as given. */
function alloy(precious: string, w: number, rest: RestOfAlloy): Record<string, number> {
  const fractions: Record<string, number> = { [precious]: w };
  for (const [component, share] of Object.entries(rest))
    fractions[component] = (fractions[component] ?? 0) + (1 - w) * share;
  return fractions;
}

function densityAt(precious: string, w: number, rest: RestOfAlloy, law: Law): number {
  const density = mixtureDensity(alloy(precious, w, rest));
  return law === "plain" ? density.plainGPerCm3 : density.correctedGPerCm3;
}

/**
 * Mass fraction of the precious metal at which the alloy has the density: solved on specific volume, because volumes add
 * and densities do not (a rule of three on density reads 750 gold in copper as 581). Held to 0…1 where the density lies beyond the ends.
 */
export function fractionAtDensity(precious: string, gPerCm3: number, rest: RestOfAlloy, law: Law): number {
  if (gPerCm3 <= densityAt(precious, 0, rest, law)) return 0;
  if (gPerCm3 >= densityAt(precious, 1, rest, law)) return 1;
  let [low, high] = [0, 1];
  while (high - low > 1e-7) {
    const middle = (low + high) / 2;
    if (densityAt(precious, middle, rest, law) < gPerCm3) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Standard uncertainty of that fraction from the mixture law alone: its density's uncertainty over the local slope. */
export function uOfLaw(precious: string, w: number, rest: RestOfAlloy): number {
  const step = 0.01;
  const [from, to] = w > 1 - step ? [w - step, w] : [w, w + step];
  const slope =
    (densityAt(precious, to, rest, "corrected") - densityAt(precious, from, rest, "corrected")) / step;
  return mixtureDensity(alloy(precious, w, rest)).uGPerCm3 / slope;
}

/** Densities the series can reach, g/cm³, lightest and densest. */
export function reach(precious: string, rests: RestOfAlloy[], law: Law): readonly [number, number] {
  const ends = rests.flatMap((rest) => [0, 1].map((w) => densityAt(precious, w, rest, law)));
  return [Math.min(...ends), Math.max(...ends)];
}
