import type { Metal } from "../metal.ts";
import { isPrecious, symbolOf } from "../precious-metal.ts";

/** The metals whose fineness is stamped. */
export const preciousElements = ["Au", "Ag", "Pt", "Pd"] as const;
export type PreciousElement = (typeof preciousElements)[number];

/** The precious metal that a claim is an alloy of; undefined for any other metal. */
export function preciousElement({ family }: Metal): PreciousElement | undefined {
  return isPrecious(family) ? symbolOf[family] : undefined;
}
