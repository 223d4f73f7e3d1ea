import type { ToldPair } from "../../told.ts";

/** What the bench refuses or reports while a piece is weighed. */
export const refusals: readonly ToldPair[] = [["Nothing was done.", "Nichts wurde getan."]];
