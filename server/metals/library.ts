import { Refusal } from "../../calibration/refusal.ts";
import { finenessFamilies } from "./fineness-families.ts";
import type { Metal } from "./metal.ts";
import { nearIds } from "./near-ids.ts";
import { recipes } from "./recipes.ts";
import { builtInWorth, type WorthTable } from "./worth-table.ts";

/** A set of metals under a version; the built-in one, or that with an owner's additions. */
export interface Library {
  version: string;
  metals: readonly Metal[];
  /** what a gram of each metal is worth beside the others */
  worth: WorthTable;
  /** True when the library holds a metal under this id. */
  has(id: string): boolean;
  /** The metal under this id. Refuses an id that has none, and names the nearest ones. */
  metal(id: string): Metal;
}

/** Goes up with any change of a value or an id; every result carries it, so that an old finding can be explained. */
export const libraryVersion = "6";

/** A library of the given metals. Refuses an id that two share. */
export function libraryOf(
  version: string,
  metals: readonly Metal[],
  worth: WorthTable = builtInWorth,
): Library {
  const byId = new Map<string, Metal>();
  for (const m of metals) {
    if (byId.has(m.id)) throw new Refusal("metal.refusal.id-twice", { id: m.id });
    byId.set(m.id, m);
  }
  return {
    version,
    metals,
    worth,
    has: (id) => byId.has(id),
    metal(id) {
      const found = byId.get(id);
      if (found) return found;
      const near = nearIds(id, [...byId.keys()]);
      throw new Refusal("metal.refusal.unknown", { id, library: version, near }, "claim");
    },
  };
}

/** The library as built: fineness families first, then recipes, base metals, heavy metals, pieces of two, elements. */
export const builtIn: Library = libraryOf(libraryVersion, [...finenessFamilies(recipes), ...recipes]);

/** Every metal of the built-in library. */
export const metals: readonly Metal[] = builtIn.metals;

/** True when the built-in library holds a metal under this id. */
export const isMetalId = (id: string): boolean => builtIn.has(id);

/** The built-in metal under this id. Refuses as `Library.metal` does. */
export const metal = (id: string): Metal => builtIn.metal(id);
