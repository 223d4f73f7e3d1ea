import type { Metal } from "../metal.ts";

const byFamily = { gold: "Au", silver: "Ag", platinum: "Pt", palladium: "Pd" } as const;

/** The metals whose fineness is stamped. */
export const preciousElements = ["Au", "Ag", "Pt", "Pd"] as const;
export type PreciousElement = (typeof preciousElements)[number];

/** The precious metal that a claim is an alloy of; undefined for any other metal. */
export function preciousElement({ family }: Metal): PreciousElement | undefined {
  return family in byFamily ? byFamily[family as keyof typeof byFamily] : undefined;
}
