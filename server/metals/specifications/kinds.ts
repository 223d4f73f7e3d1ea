import { z } from "zod";
import { json } from "../../ledger/shapes.ts";

export const specificationKinds = {
  /** the owner's own specifications in force from here on, in the form they travel in */
  specifications: z.strictObject({ version: z.number().int().min(1), specifications: json }),
};
