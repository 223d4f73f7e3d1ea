import { englishName } from "../metals/catalogue-code.ts";
import type { Library } from "../metals/library.ts";
import type { MetalGroup } from "./bench-settings.ts";
import { finestFirst, groupFirst } from "./metal-groups.ts";

/** The band of a metal, g/cm³ at 20 °C, and whether people bring pieces said to be it. */
export interface MetalBand {
  id: string;
  name: string;
  low: number;
  high: number;
  claimable: boolean;
}

const claimedFamilies = new Set(["gold", "silver", "platinum", "palladium", "own"]);

/** The library as pages draw it, what is mostly seen first; a piece is claimed by its fineness, not by one of its recipes. */
export function metalBands({ metals }: Library, mostly: MetalGroup = "any"): MetalBand[] {
  const grouped = new Set(metals.flatMap(({ recipes }) => recipes ?? []));
  return groupFirst(finestFirst(metals), mostly).map((metal) => {
    const { id, family, densityGPerCm3 } = metal;
    return {
      id,
      name: englishName(metal),
      low: densityGPerCm3.low,
      high: densityGPerCm3.high,
      claimable: claimedFamilies.has(family) && !grouped.has(id),
    };
  });
}

/** What a piece can be said to be: id and name. */
export function claimsOf(bands: readonly MetalBand[]): { id: string; name: string }[] {
  return bands.filter(({ claimable }) => claimable).map(({ id, name }) => ({ id, name }));
}
