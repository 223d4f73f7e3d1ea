import type { ToldPair } from "../../told.ts";

/** Why an assay was not written down. */
export const assays: readonly ToldPair[] = [];
