import { z } from "zod";
import { decimalText, json, words } from "./shapes.ts";

export const checkKinds = {
  /** a check of the bench against something known: check weight, reference piece, thermometer, repeatability … */
  check: z.looseObject({
    what: words,
    outcome: z.enum(["good", "warning", "action"]).optional(),
    says: words.optional(),
    value: decimalText.optional(),
    by: words.optional(),
  }),
  /** one version of what is known about a balance and its lines */
  "balance-profile": z.looseObject({ name: words, version: z.number().int().min(1), profile: json }),
  /** the library of metals in force from here on */
  "library-version": z.looseObject({ version: words, says: words.optional() }),
};
