import type { ToldPair } from "../../told-pair.ts";

/** Doubts about a lot, and why something was not done with it. */
export const lots: readonly ToldPair[] = [];
