import { z } from "zod";
import { decimalText, words } from "../ledger/shapes.ts";
import { preciousMetals } from "../metals/precious-metal.ts";

export const laboratoryKinds = {
  /** what a laboratory found in the piece, or in a sample of it; the newest counts, the earlier ones stay */
  "laboratory-assay": z.strictObject({
    metal: z.enum(preciousMetals),
    permille: decimalText,
    /** expanded uncertainty as the laboratory states it, ‰, and the coverage factor it states with it */
    expanded_permille: decimalText.optional(),
    coverage_factor: decimalText.optional(),
    laboratory: words,
    report: words,
    method: words,
    /** day of the report, 2026-03-02 */
    date: z.iso.date(),
    /** id of the assay that this one corrects or follows */
    replaces: words.optional(),
    reason: words.optional(),
    by: words.optional(),
  }),
};
