import type { MeasuredDensity } from "../../calibration/measured-density.ts";
import { type Substitute, substitutes } from "../metals/composites/substitutes.ts";
import type { Library } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";
import { bandAt, excludes } from "./exclusion.ts";

const likelihoodOrder = { common: 0, possible: 1, rare: 2 } as const;
const fineGold = new Set(["el-au", "au-24", "au-999", "au-995"]);
const tungsten = new Set(["el-w", "w-pure", "w-core-au"]);

/**
 * Library metals that the measurement does not exclude, likeliest first. Solid tungsten and a tungsten core stay beside
 * fine gold whatever the numbers say.
 */
export function metalsNotExcluded(
  measured: MeasuredDensity,
  confidence: number,
  celsius: number,
  { metals }: Library,
): Metal[] {
  const fits = new Set(metals.filter((m) => !excludes(measured, bandAt(m, celsius), confidence)));
  const goldLeft = [...fits].some((m) => fineGold.has(m.id));
  if (goldLeft) for (const m of metals) if (tungsten.has(m.id)) fits.add(m);
  const order = (m: Metal) => likelihoodOrder[m.likelihood];
  const away = (m: Metal) => Math.abs(m.densityGPerCm3.nominal - measured.valueGPerCm3);
  return [...fits].sort((a, b) => order(a) - order(b) || away(a) - away(b));
}

/** Pieces of two that fit the interval; it is brought to 20 °C by the claim's expansion. */
export function madeUpBeside(
  measured: MeasuredDensity,
  claimed: Metal,
  celsius: number,
  library: Library,
): Substitute[] {
  const shrunk = claimed.densityGPerCm3.nominal / bandAt(claimed, celsius).nominal;
  const [low, high] = measured.intervalGPerCm3;
  return substitutes([low * shrunk, high * shrunk], claimed, library);
}
