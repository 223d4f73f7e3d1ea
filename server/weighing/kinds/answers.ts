import { z } from "zod";
import { message, words } from "../../ledger/shapes.ts";

export const answerKinds = {
  /** checks that stop a record were answered by what somebody found who looked into them */
  "check-answered": z.strictObject({
    checks: z.array(message).min(1),
    found: words,
    by: words.optional(),
  }),
};
