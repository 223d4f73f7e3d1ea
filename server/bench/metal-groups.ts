import type { Metal } from "../alloys/metal.ts";
import type { MetalGroup } from "./bench-settings.ts";

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
