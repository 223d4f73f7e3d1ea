import type { Metal } from "../metals/metal.ts";
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

const preciousOf: Readonly<Record<string, string>> = {
  gold: "Au",
  silver: "Ag",
  platinum: "Pt",
  palladium: "Pd",
};
const families = Object.keys(preciousOf);

/** The metals as a price list names them: gold, silver, platinum, palladium, the finest first; the rest after, in its order. */
export function finestFirst(metals: readonly Metal[]): Metal[] {
  const place = ({ family }: Metal) =>
    families.includes(family) ? families.indexOf(family) : families.length;
  const fineness = ({ family, composition }: Metal) => composition[preciousOf[family] ?? ""]?.[0] ?? 0;
  return [...metals].sort((a, b) => place(a) - place(b) || fineness(b) - fineness(a));
}
