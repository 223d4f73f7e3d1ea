import { z } from "zod";
import { words } from "../ledger/shapes.ts";

export const photoKinds = {
  /** a picture of the piece, kept beside the ledger under its hash; the chain covers it by that */
  photo: z.strictObject({
    hash: z.string().regex(/^[0-9a-f]{64}$/, { error: "the SHA-256 of the file, 64 hexadecimal digits" }),
    bytes: z.number().int().min(1),
    type: z.enum(["image/jpeg", "image/png", "image/webp"]),
    width: z.number().int().min(1),
    height: z.number().int().min(1),
    /** what it shows, in the operator's words */
    shows: words.optional(),
    by: words.optional(),
  }),
};
