import { cornersOf, isWithin } from "../composition-range.ts";
import type { Library } from "../library.ts";
import type { Metal } from "../metal.ts";
import { type MassFractions, mixtureDensity } from "../mixture.ts";
import type { PreciousElement } from "./precious-element.ts";

/**
 * One way to share out what is not the precious metal, at the stamp's fineness: its specific volume in cm³/g with the
 * mixture law's standard uncertainty, and how the volume moves with the precious metal's share.
 */
export interface RestCorner {
  share: number;
  cm3PerG: number;
  uCm3PerG: number;
  /** d(cm³/g) / d(share of the precious metal) */
  slope: number;
  /** as a made piece that is as light as its recipe's states leave it */
  light?: true;
}

/** The ways a recipe leaves to share out its rest. */
export interface RecipeRest {
  recipe: Metal;
  corners: readonly RestCorner[];
}

/** Additions stay as they are when an alloy holds more or less of its precious metal; the other metals make up for it. */
const additions: ReadonlySet<string> = new Set(["Zn", "Ge", "Ga", "In", "Si", "Ti", "Sn", "P"]);
const step = 0.002;

/** What a composition says as a corner. */
function restCorner(element: PreciousElement, fractions: MassFractions): RestCorner {
  const share = fractions[element] ?? 0;
  const { correctedGPerCm3, uGPerCm3 } = mixtureDensity(fractions);
  const cm3PerG = 1 / correctedGPerCm3;
  const volumeAt = (part: number) => 1 / mixtureDensity(withShare(element, fractions, part)).correctedGPerCm3;
  const [less, more] = [share - step, Math.min(1, share + step)];
  return {
    share,
    cm3PerG,
    uCm3PerG: uGPerCm3 / correctedGPerCm3 ** 2,
    slope: (volumeAt(more) - volumeAt(less)) / (more - less),
  };
}

/** The composition with another share of the precious metal: its main metals make up for it, in their proportion. */
function withShare(element: PreciousElement, fractions: MassFractions, share: number): MassFractions {
  const rest = Object.entries(fractions).filter(([of, w]) => of !== element && w > 0);
  const main = rest.filter(([of]) => !additions.has(of));
  const traded = main.length > 0 && sum(main) > step ? main : rest;
  const change = share - (fractions[element] ?? 0);
  // fine metal has no rest to trade with: copper is what it is usually alloyed with
  if (sum(traded) <= Math.max(0, change)) return { [element]: share, Cu: 1 - share };
  const factor = 1 - change / sum(traded);
  return {
    ...fractions,
    [element]: share,
    ...Object.fromEntries(traded.map(([of, w]) => [of, w * factor])),
  };
}

const sum = (parts: readonly (readonly [string, number])[]) => parts.reduce((all, [, w]) => all + w, 0);

const known = new WeakMap<Metal, readonly RecipeRest[]>();

/**
 * What each recipe of a claim leaves free beside its precious metal. A recipe whose limits lie within those of another
 * adds nothing and is left out.
 */
export function restsOf(claimed: Metal, element: PreciousElement, library: Library): readonly RecipeRest[] {
  const held = known.get(claimed);
  if (held) return held;
  const recipes = (claimed.recipes ?? [claimed.id]).map((id) => library.metal(id));
  const found = recipes
    .filter((one, at) => !recipes.some((other, place) => place !== at && isPartOf(one, other)))
    .map((recipe): RecipeRest => ({ recipe, corners: cornersOfRest(recipe, element) }));
  known.set(claimed, found);
  return found;
}

function isPartOf(one: Metal, other: Metal): boolean {
  return isWithin(rangeOf(one), rangeOf(other)) && !isWithin(rangeOf(other), rangeOf(one));
}

function rangeOf({ composition }: Metal): Record<string, readonly [number, number]> {
  return Object.fromEntries(
    Object.entries(composition).map(([of, [usual, low, high]]) => [of, [low ?? usual, high ?? usual]]),
  );
}

/** The corner of a piece that is lighter by a share than its sound alloy. */
const lighter = (corner: RestCorner, by: number): RestCorner => ({
  ...corner,
  cm3PerG: corner.cm3PerG / (1 - by),
  light: true,
});

function cornersOfRest(recipe: Metal, element: PreciousElement): RestCorner[] {
  const usual = Object.entries(recipe.composition);
  const whole = usual.reduce((all, [, [w]]) => all + w, 0);
  const share = (recipe.composition[element]?.[0] ?? 0) / whole;
  const limited = { ...rangeOf(recipe), [element]: [share, share] as const };
  const sound = cornersOf(limited).map((fractions) => restCorner(element, fractions));
  const { lighterBy = 0 } = recipe;
  return lighterBy === 0 ? sound : [...sound, ...sound.map((corner) => lighter(corner, lighterBy))];
}
