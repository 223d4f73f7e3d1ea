import type { Metal } from "../alloys/metal.ts";
import type { MetalGroup } from "./bench-settings.ts";

/** The answers to "which metal do you mostly see?". */
export const metalGroupNames: Record<MetalGroup, string> = {
  silver: "Silver",
  gold: "Gold",
  platinum: "Platinum and palladium",
  any: "All sorts",
};

const familiesOf: Record<MetalGroup, readonly string[]> = {
  silver: ["silver"],
  gold: ["gold"],
  platinum: ["platinum", "palladium"],
  any: [],
};

/** The metals with those of the group first, otherwise in their order. */
export function groupFirst(metals: readonly Metal[], group: MetalGroup): Metal[] {
  const first = new Set(familiesOf[group]);
  return [
    ...metals.filter(({ family }) => first.has(family)),
    ...metals.filter(({ family }) => !first.has(family)),
  ];
}
