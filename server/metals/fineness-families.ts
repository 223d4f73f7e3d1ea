import { message } from "../../calibration/message.ts";
import { called } from "./called.ts";
import type { DensityBand, Figure, Fraction, Metal } from "./metal.ts";
import { computedBy, type Provenance } from "./provenance.ts";

const span = (pairs: (readonly [number, number])[]): readonly [number, number] => [
  Math.min(...pairs.map(([low]) => low)),
  Math.max(...pairs.map(([, high]) => high)),
];

function bandOver(recipes: readonly Metal[]): DensityBand {
  const [low, high] = span(recipes.map((r) => [r.densityGPerCm3.low, r.densityGPerCm3.high]));
  return { nominal: recipes[0]!.densityGPerCm3.nominal, low, high };
}

/** Every component any recipe uses, from the least to the most that any of them allows. */
function compositionOver(recipes: readonly Metal[]): Record<string, Fraction> {
  const components = new Set(recipes.flatMap((r) => Object.keys(r.composition)));
  const fractions: Record<string, Fraction> = {};
  for (const c of components) {
    const given = recipes.map((r) => r.composition[c] ?? ([0, 0, 0] as const));
    const [low, high] = span(given.map(([nominal, lo, hi]) => [lo ?? nominal, hi ?? nominal]));
    fractions[c] = [given[0]![0], low, high];
  }
  return fractions;
}

const strongest = (recipes: readonly Metal[]) =>
  (["strong", "weak", "none"] as const).find((m) => recipes.some((r) => r.magnetism === m)) ?? "none";

/** Where one number is wanted it is that of the first recipe; a band runs over all of them. */
const ofFirst: readonly Figure[] = [
  "composition",
  "nominal",
  "expansion",
  "sound",
  "elasticModulus",
  "poissonRatio",
  "colour",
];
const overAll: readonly Figure[] = [
  "limits",
  "low",
  "high",
  "magnetism",
  "conductivityLow",
  "conductivityHigh",
  "likelihood",
];

function provenanceOver(recipes: readonly Metal[]): Partial<Record<Figure, Provenance>> {
  const known = (figure: Figure) => recipes.some(({ provenance }) => provenance[figure]);
  const by = (figures: readonly Figure[], provenance: Provenance) =>
    figures.filter(known).map((figure) => [figure, provenance] as const);
  return Object.fromEntries([
    ...by(ofFirst, computedBy("first-recipe")),
    ...by(overAll, computedBy("extremes-over-recipes")),
    ["limits", computedBy("extremes-over-recipes")],
  ]);
}

function familyOf(id: string, recipes: readonly Metal[]): Metal {
  const first = recipes[0]!;
  const conductivities = recipes.flatMap((r) =>
    r.conductivityIacsPercent ? [r.conductivityIacsPercent] : [],
  );
  return {
    id,
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
    provenance: provenanceOver(recipes),
    otherDensities: [],
    notes: [message("metal.note.family", { recipes: recipes.map(called) })],
    recipes: recipes.map((recipe) => recipe.id),
  };
}

/**
 * What a stamp promises is a fineness, and a fineness leaves the rest of the alloy free: a family groups the recipes that
 * name it as their fineness, in their order. The finenesses are those of ISO 9202 (from memory) and the older carats.
 */
export function finenessFamilies(recipes: readonly Metal[]): Metal[] {
  const stamps = [...new Set(recipes.flatMap(({ fineness }) => fineness ?? []))];
  return stamps.map((stamp) =>
    familyOf(
      stamp,
      recipes.filter(({ fineness }) => fineness === stamp),
    ),
  );
}
