import { z } from "zod";
import { decimalText, weightReading, words } from "../../ledger/shapes.ts";

export const secondPersonKinds = {
  /** typed readings read off and typed again by a second person, without seeing the first; every one stays */
  "second-reading": z.strictObject({
    by: words,
    /** who typed the readings it is held against */
    typedBy: words,
    /** the entries of those readings */
    of: z.array(words),
    readings: z.array(
      z.strictObject({
        what: z.enum(["dry", "immersed", "rise", "flask-full", "flask-with-piece"]),
        reading: weightReading,
        /** the first reading, or the mean of several, g */
        against_g: decimalText,
        /** by how much two readings of one load may differ, g */
        within_g: z.number().nonnegative(),
        agrees: z.boolean(),
      }),
    ),
    /** the water temperature, where it was typed, °C */
    temperature: z
      .strictObject({
        celsius: decimalText,
        against: decimalText,
        within_celsius: z.number().nonnegative(),
        agrees: z.boolean(),
      })
      .optional(),
    agrees: z.boolean(),
    /** the limit above which it was asked for */
    above: words,
  }),
};
