import { gold } from "./gold.ts";
import type { DensityBand, Fraction, Metal } from "./metal.ts";
import { palladium } from "./palladium.ts";
import { platinum } from "./platinum.ts";
import { silver } from "./silver.ts";

/**
 * What a stamp promises is a fineness, and a fineness leaves the rest of the alloy free: a family groups the recipes
 * that may carry the stamp. The list of finenesses is that of ISO 9202 (from memory) and the older carats.
 */
const stamps: { id: string; name: string; recipes: string[] }[] = [
  { id: "au-958", name: "Gold 958 (23 ct)", recipes: ["au-23"] },
  { id: "au-916", name: "Gold 916 (22 ct)", recipes: ["au-22y", "au-22r"] },
  { id: "au-900", name: "Gold 900 (coin)", recipes: ["au-900r"] },
  { id: "au-875", name: "Gold 875 (21 ct)", recipes: ["au-21y"] },
  { id: "au-833", name: "Gold 833 (20 ct)", recipes: ["au-20y"] },
  {
    id: "au-750",
    name: "Gold 750 (18 ct)",
    recipes: ["au-18y", "au-18y2", "au-18r", "au-18p", "au-18g", "au-18wpd", "au-18wni"],
  },
  { id: "au-667", name: "Gold 667 (16 ct)", recipes: ["au-16y"] },
  { id: "au-625", name: "Gold 625 (15 ct)", recipes: ["au-15y"] },
  { id: "au-585", name: "Gold 585 (14 ct)", recipes: ["au-14y", "au-14r", "au-14g", "au-14wni"] },
  { id: "au-500", name: "Gold 500 (12 ct)", recipes: ["au-12y"] },
  { id: "au-417", name: "Gold 417 (10 ct)", recipes: ["au-10y"] },
  { id: "au-375", name: "Gold 375 (9 ct)", recipes: ["au-9y", "au-9y2", "au-9w"] },
  { id: "au-333", name: "Gold 333 (8 ct)", recipes: ["au-8y"] },
  { id: "ag-925", name: "Silver 925 (sterling)", recipes: ["ag-925-cu", "ag-925-zn"] },
  {
    id: "pt-950",
    name: "Platinum 950",
    recipes: ["pt-950ru", "pt-950co", "pt-950ir", "pt-950cu", "pt-950pd"],
  },
  { id: "pt-900", name: "Platinum 900", recipes: ["pt-900ir"] },
  { id: "pt-850", name: "Platinum 850", recipes: ["pt-850pd", "pt-850ir"] },
];

const known = new Map<string, Metal>([...gold, ...silver, ...platinum, ...palladium].map((m) => [m.id, m]));

const span = (pairs: (readonly [number, number])[]): readonly [number, number] => [
  Math.min(...pairs.map(([low]) => low)),
  Math.max(...pairs.map(([, high]) => high)),
];

function bandOver(recipes: Metal[]): DensityBand {
  const [low, high] = span(recipes.map((r) => [r.densityGPerCm3.low, r.densityGPerCm3.high]));
  return { nominal: recipes[0]!.densityGPerCm3.nominal, low, high };
}

/** Every component any recipe uses, from the least to the most that any of them allows. */
function compositionOver(recipes: Metal[]): Record<string, Fraction> {
  const components = new Set(recipes.flatMap((r) => Object.keys(r.composition)));
  const fractions: Record<string, Fraction> = {};
  for (const c of components) {
    const given = recipes.map((r) => r.composition[c] ?? ([0, 0, 0] as const));
    const [low, high] = span(given.map(([nominal, lo, hi]) => [lo ?? nominal, hi ?? nominal]));
    fractions[c] = [given[0]![0], low, high];
  }
  return fractions;
}

const strongest = (recipes: Metal[]) =>
  (["strong", "weak", "none"] as const).find((m) => recipes.some((r) => r.magnetism === m)) ?? "none";

/** The family's values: the first recipe's where one number is wanted, the extremes over all recipes where a band is. */
export const finenessFamilies: Metal[] = stamps.map(({ id, name, recipes: ids }) => {
  const recipes = ids.map((recipe) => known.get(recipe)!);
  const first = recipes[0]!;
  const conductivities = recipes.flatMap((r) =>
    r.conductivityIacsPercent ? [r.conductivityIacsPercent] : [],
  );
  return {
    id,
    name,
    family: first.family,
    composition: compositionOver(recipes),
    densityGPerCm3: bandOver(recipes),
    expansionPerMillionK: first.expansionPerMillionK,
    magnetism: strongest(recipes),
    conductivityIacsPercent: conductivities.length > 0 ? span(conductivities) : null,
    soundMPerS: first.soundMPerS,
    elasticModulusGPa: first.elasticModulusGPa,
    poissonRatio: first.poissonRatio,
    colour: first.colour,
    likelihood: "common",
    source: `extremes over ${ids.join(", ")}`,
    verified: recipes.every((r) => r.verified),
    recipes: ids,
  };
});
