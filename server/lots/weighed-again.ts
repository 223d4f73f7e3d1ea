import type { LotItem } from "./lot-item.ts";

/** What a dry piece that comes back to the pan says against its first dry mass. */
export interface WeighedAgain {
  kind: "the same" | "gained" | "lost" | "other-piece";
  /** now minus then, g */
  changeG: number;
  /** tickets of the lot that weigh what is on the pan now */
  like: readonly string[];
}

/** A tenth of its own mass is more water than a hollow piece keeps [common practice]; then it is another piece. */
const mostWater = 0.1;

/**
 * Compares the second dry mass with the first: the mass is the fingerprint of a piece. Two readings agree within twice
 * one step of each display, added in squares (common practice). More is water inside, much more or less another piece.
 */
export function weighedAgain(item: LotItem, others: readonly LotItem[]): WeighedAgain | undefined {
  const { again, dryG, stepG } = item;
  if (!again) return undefined;
  const changeG = again.grams - dryG;
  const within = (step: number) => 2 * Math.hypot(step, again.stepG) + 1e-9;
  if (Math.abs(changeG) <= within(stepG)) return { kind: "the same", changeG, like: [] };
  const like = others
    .filter(
      (one) => one.id !== item.id && one.counts && Math.abs(again.grams - one.dryG) <= within(one.stepG),
    )
    .map(({ ticket }) => ticket);
  if (like.length > 0 || Math.abs(changeG) > mostWater * dryG) return { kind: "other-piece", changeG, like };
  return { kind: changeG > 0 ? "gained" : "lost", changeG, like };
}
