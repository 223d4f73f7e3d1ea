import { z } from "zod";
import { decimalText, message, weightReading, words } from "../ledger/shapes.ts";
import { preciousMetals } from "../metals/precious-metal.ts";
import { screeningMethods } from "../methods/index.ts";
import { settled } from "../settlements/kinds.ts";

export const lotKinds = {
  /** a lot is taken in: weighed as a whole and counted, before any piece of it is weighed */
  "lot-opened": z.strictObject({
    name: z.string().trim().min(1).max(200),
    /** a ticket; no person need be named */
    from: words.optional(),
    gross: weightReading.optional(),
    count: z.number().int().min(1).max(100_000).optional(),
    claim: words.optional(),
    /** nothing is claimed of its pieces, so that no ticket is asked about */
    nothingClaimed: z.literal(true).optional(),
    method: z.enum(screeningMethods),
  }),
  /** the water temperature that counts for the pieces weighed from here on */
  "lot-water": z.strictObject({ celsius: decimalText }),
  /** a flag on a piece of the lot is set or cleared; every one stays */
  "lot-flag": z.strictObject({
    piece: words,
    flag: z.string().trim().min(1).max(100),
    set: z.boolean(),
    reason: words,
    by: words.optional(),
  }),
  /** no more pieces from here on; with what the lot came to */
  "lot-closed": z.strictObject({
    pieces: z.number().int().nonnegative(),
    sum_g: decimalText,
    missing_g: decimalText.optional(),
    fine_g: z.partialRecord(z.enum(preciousMetals), z.strictObject({ low: decimalText, high: decimalText })),
    flagged: z.number().int().nonnegative(),
    by: words.optional(),
    note: words.optional(),
    /** what was asked before closing, with what was found */
    answers: z.array(z.strictObject({ asked: message, found: words })).optional(),
    /** 1 for the first closing, 2 for the one after it was opened again */
    version: z.number().int().min(1).optional(),
    /** what is paid, frozen; left out where no price was promised */
    settlement: settled.optional(),
    second: words.optional(),
  }),
  /** a closed lot is opened again; what it was closed with stays */
  "lot-reopened": z.strictObject({ closing: words, reason: words, by: words, second: words }),
};
