import { z } from "zod";
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
    method: z.enum(["hung", "displaced"]),
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
};
