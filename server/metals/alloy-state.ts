import { keysOf } from "../../calibration/keyed.ts";
import allowances from "./data/allowances.json" with { type: "json" };

/** How a piece of an alloy was made; each leaves sound pieces lighter by a share of their density. */
export type AlloyState = keyof typeof allowances;
export const alloyStates = keysOf(allowances);

/** By what share a piece of these states may be lighter than the sound alloy. Common practice. */
export function lighterBy(states: readonly AlloyState[]): number {
  return states.reduce((sum, state) => sum + allowances[state].share, 0);
}
