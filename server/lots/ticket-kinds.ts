import { z } from "zod";
import { decimalText, words } from "../ledger/shapes.ts";

export const ticketKinds = {
  /** a piece that is to be weighed, from a list; what it says of the piece is the customer's, not measured */
  "ticket-announced": z.strictObject({
    ticket: z.string().min(1).max(200),
    description: z.string().max(2000),
    claim: words.optional(),
    lot: words.optional(),
    customer: words.optional(),
    mass_g: decimalText.optional(),
    /** the list it came from */
    from: words,
  }),
};
