/** Families of metals that are paid for by their fine mass. */
export const preciousMetals = ["gold", "silver", "platinum", "palladium"] as const;
export type PreciousMetal = (typeof preciousMetals)[number];

/** Their symbols. */
export const symbolOf = {
  gold: "Au",
  silver: "Ag",
  platinum: "Pt",
  palladium: "Pd",
} as const satisfies Record<PreciousMetal, string>;

/** True for the family of a metal that is paid for by its fine mass. */
export function isPrecious(family: string): family is PreciousMetal {
  return preciousMetals.some((metal) => metal === family);
}
