import { z } from "zod";
import { json, moment, sentence, words } from "../ledger/shapes.ts";

export const checkKinds = {
  /** a check of the bench against something known, as server/checks gives it: check weight, thermometer … */
  check: z.looseObject({
    kind: words,
    passed: z.boolean(),
    says: sentence,
    todo: z.union([sentence, z.literal("")]).optional(),
    by: words.optional(),
    of: words.optional(),
    at: z.string().optional(),
    found: json.optional(),
  }),
  /** limits of a control chart, signed: who, why, and from which points */
  "control-limits": z.looseObject({
    chart: words,
    of: words,
    from: words,
    mean: z.number(),
    s: z.number(),
    n: z.number().int(),
    provisional: z.boolean(),
    signedBy: words,
    why: words,
  }),
  /** a balance told that it adjusted itself, or a person looked at what that asks for */
  adjustment: z.looseObject({ of: words, notice: sentence.optional(), lookedAtBy: words.optional() }),
  /** one version of what is known about a balance and its lines */
  "balance-profile": z.looseObject({ name: words, version: z.number().int().min(1), profile: json }),
  /** one version of what the checks say of a balance or of the thermometer: the numbers budgets take from here on */
  "checked-profile": z.looseObject({
    of: words,
    version: z.number().int().min(1),
    /** the first of its checks runs out then */
    validUntil: moment,
    numbers: json,
  }),
  /** the library of metals in force from here on */
  "library-version": z.looseObject({ version: words, says: words.optional() }),
};
