import type { DensityResult } from "../../calibration/density-result.ts";
import { measuredDensity } from "../../calibration/distribution.ts";
import { bandAt, excludes } from "../conformity/exclusion.ts";
import { fineMass } from "../metals/fineness/fine-mass.ts";
import { goldFineness, silverFineness } from "../metals/fineness/fineness.ts";
import { builtIn } from "../metals/library.ts";
import type { Metal } from "../metals/metal.ts";

/** Fineness and fine mass over the recipes a claim allows. */
export interface StatedFineness {
  element: "Au" | "Ag";
  permille: [number, number];
  fine_g: [number, number];
  /** the recipes of the claim that the density does not exclude */
  recipes: string[];
}

/** Fineness of sound gold or silver alloy of the claim; null for other metals and where no such alloy has the density. */
export function finenessOf(claimed: Metal, result: DensityResult, confidence: number): StatedFineness | null {
  const measured = measuredDensity(result);
  const celsius = result.liquidCelsius;
  const found =
    claimed.family === "gold"
      ? goldFineness(measured, "any", celsius)
      : claimed.family === "silver"
        ? silverFineness(measured, celsius)
        : null;
  if (!found?.possible) return null;
  const { low, high } = found.corrected;
  const { lowG, highG } = fineMass(result.massGrams, 2 * result.uMassGrams, found.corrected);
  const recipes = (claimed.recipes ?? [claimed.id]).filter(
    (id) => builtIn.has(id) && !excludes(measured, bandAt(builtIn.metal(id), celsius), confidence),
  );
  return {
    element: found.precious,
    permille: [low, high],
    fine_g: [lowG, Math.min(highG, result.massGrams + 2 * result.uMassGrams)],
    recipes,
  };
}
