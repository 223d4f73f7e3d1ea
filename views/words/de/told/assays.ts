import type { ToldPair } from "../../told-pair.ts";

/** Why an assay was not written down. */
export const assays: readonly ToldPair[] = [];
