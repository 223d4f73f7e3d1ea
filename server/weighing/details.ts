import type { BodyOf } from "../ledger/kinds.ts";

/** What is particular to one weighing: pool, added bodies, hanger, liquid, steps of the display. Decimal text. */
export type Details = BodyOf<"weighing-details">;

/** A plain weighing: one piece in the bench's water, hanger zeroed at its depth. */
export const noDetails: Details = {};
