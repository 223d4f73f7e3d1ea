import { z } from "zod";
import { words } from "../ledger/shapes.ts";

const sha256Text = z.string().regex(/^[0-9a-f]{64}$/, { error: "a SHA-256, 64 hexadecimal digits" });

export const reportKinds = {
  "report-issued": z.strictObject({
    number: words,
    copy: z.number().int().min(1),
    /** id and hash of the entry the report states */
    record: words,
    recordHash: z.string(),
    replaces: words.optional(),
    /** who authorised it */
    by: words.optional(),
    /** two letters; reports from before there was a choice are in English */
    language: z
      .string()
      .regex(/^[a-z]{2}$/, { error: "two small letters, such as de" })
      .optional(),
    /** what the report printed that later versions of library and key would change */
    keyId: z.string().optional(),
    bands: z.array(z.strictObject({ id: words, name: words, low: z.number(), high: z.number() })).optional(),
    /** the click that asked for it, so that a click sent twice issues once */
    click: words.optional(),
    /** SHA-256 of the PDF and of the main part of the page as they were printed; kept beside the ledger */
    print: z.strictObject({ pdf: sha256Text, page: sha256Text }).optional(),
    /** version of the program whose wording it has */
    program: words.optional(),
  }),
};
