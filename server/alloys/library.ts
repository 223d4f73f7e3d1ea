import { brassAndBronze } from "./brass-and-bronze.ts";
import { coredAndPlated } from "./cored-and-plated.ts";
import { elements } from "./elements.ts";
import { finenessFamilies } from "./fineness-families.ts";
import { gold } from "./gold.ts";
import { heavyMetals } from "./heavy-metals.ts";
import { leadTinZinc } from "./lead-tin-zinc.ts";
import type { Metal } from "./metal.ts";
import { nearIds } from "./near-ids.ts";
import { palladium } from "./palladium.ts";
import { platinum } from "./platinum.ts";
import { silver } from "./silver.ts";
import { steel } from "./steel.ts";
import { whiteCopperAlloys } from "./white-copper-alloys.ts";

/** Goes up with any change of a value or an id; every result carries it, so that an old finding can be explained. */
export const libraryVersion = "1";

/** Every metal of the library: fineness families first, then recipes, base metals, heavy metals, elements. */
export const metals: readonly Metal[] = [
  ...finenessFamilies,
  ...gold,
  ...silver,
  ...platinum,
  ...palladium,
  ...brassAndBronze,
  ...whiteCopperAlloys,
  ...leadTinZinc,
  ...steel,
  ...heavyMetals,
  ...coredAndPlated,
  ...elements,
];

const byId = new Map(metals.map((m) => [m.id, m]));

/** True when the library holds a metal under this id. */
export function isMetalId(id: string): boolean {
  return byId.has(id);
}

/** The metal under this id. Throws RangeError that names the nearest ids when there is none. */
export function metal(id: string): Metal {
  const found = byId.get(id);
  if (found) return found;
  const near = nearIds(id, [...byId.keys()]);
  throw new RangeError(
    `No metal "${id}" in library ${libraryVersion}. Near it: ${near.join(", ")}. Right: an id of the library, such as ag-925, au-750 or el-cu.`,
  );
}
