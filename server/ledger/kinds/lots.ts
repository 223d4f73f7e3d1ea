import { z } from "zod";
import { screeningMethods } from "../../methods/index.ts";
import { decimalText, weightReading, words } from "./shapes.ts";

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
  /** a price is locked for one metal of the lot; the newest of a metal counts, the earlier ones stay */
  "lot-price": z.strictObject({
    metal: z.enum(["gold", "silver"]),
    price: decimalText,
    currency: z.string().regex(/^[A-Z]{3}$/, { error: "three letters such as EUR" }),
    per: z.enum(["g", "ozt", "dwt"]),
    source: words,
    at: words,
    ratePercent: decimalText,
    fee: decimalText,
    rounding: z.enum(["down", "half-even", "up"]),
  }),
  /** a flag on a piece of the lot is set or cleared; every one stays */
  "lot-flag": z.strictObject({
    piece: words,
    flag: z.string().trim().min(1).max(100),
    set: z.boolean(),
    reason: words,
    by: words.optional(),
  }),
  /** what settles a piece beside its density; the newest of a piece counts, the earlier ones stay */
  "lot-terms": z.strictObject({
    piece: words,
    /** stones, thread and other parts that are not metal, g */
    deducted_g: decimalText.optional(),
    fineness: z
      .strictObject({ permille: decimalText, saidBy: z.enum(["stamp", "laboratory", "customer"]) })
      .optional(),
    by: words.optional(),
  }),
  /** no more pieces from here on; with what the lot came to */
  "lot-closed": z.strictObject({
    pieces: z.number().int().nonnegative(),
    sum_g: decimalText,
    missing_g: decimalText.optional(),
    fine_g: z.partialRecord(
      z.enum(["gold", "silver"]),
      z.strictObject({ low: decimalText, high: decimalText }),
    ),
    flagged: z.number().int().nonnegative(),
    by: words.optional(),
    note: words.optional(),
  }),
};
