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
 * and densities do not (a rule of three on density reads 750 gold in copper as 581). The excess terms are products of two
 * fractions, so the specific volume is a parabola in the fraction, which three of its points tell exactly. Held to 0…1
 * where the density lies beyond the ends.
 */
export function fractionAtDensity(precious: string, gPerCm3: number, rest: RestOfAlloy, law: Law): number {
  const volumeAt = (w: number) => 1 / densityAt(precious, w, rest, law);
  const volume = 1 / gPerCm3;
  const [none, half, whole] = [volumeAt(0), volumeAt(0.5), volumeAt(1)] as const;
  if (volume >= none) return 0;
  if (volume <= whole) return 1;
  const square = 2 * (none - 2 * half + whole);
  const slope = whole - none - square;
  // of the two roots the one that a straight line has too, without a difference of near equals
  return (-2 * (none - volume)) / (slope - Math.sqrt(slope * slope - 4 * square * (none - volume)));
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
