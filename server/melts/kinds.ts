import { z } from "zod";
import { decimalText, weightReading, words } from "../ledger/shapes.ts";
import { preciousMetals } from "../metals/precious-metal.ts";
import { resultsFrom, sides } from "./side.ts";

const metal = z.enum(preciousMetals);

export const meltKinds = {
  /** lots are melted into one; with the mass that went into the crucible */
  "melt-made": z.strictObject({
    name: z.string().trim().min(1).max(200),
    /** ids of the lots */
    lots: z.array(words).min(1),
    before: weightReading,
    /** what those lots weighed by their pieces, stones taken off, g */
    lots_g: decimalText,
    /** why another mass went in than the lots weighed */
    reason: words.optional(),
    by: words,
  }),
  /** the bar as it was poured, before it was drilled; the newest counts */
  "melt-poured": z.strictObject({
    after: weightReading,
    /** id of the record of the bar, where its density was measured */
    bar: words.optional(),
    by: words,
  }),
  /** a sample was taken */
  "melt-drilled": z.strictObject({ drilling: words, mass: weightReading.optional(), by: words }),
  /** how far apart duplicates of one side, and the two sides, may lie, ‰; the newest of a metal counts */
  "melt-tolerance": z.strictObject({
    metal,
    duplicates_permille: decimalText,
    sides_permille: decimalText,
    by: words,
    reason: words.optional(),
  }),
  /** what a laboratory found in a drilling */
  "melt-assay": z.strictObject({
    drilling: words,
    side: z.enum(sides),
    metal,
    permille: decimalText,
    /** expanded uncertainty as the laboratory states it, k = 2, ‰ */
    expanded_permille: decimalText.optional(),
    laboratory: words,
    report: words,
    method: words,
    date: z.iso.date(),
    by: words,
  }),
  /** an assay no longer counts; it stays */
  "melt-assay-excluded": z.strictObject({ entry: words, reason: words, by: words }),
  /** the final figures of a melt */
  "melt-settled": z.strictObject({
    before_g: decimalText,
    after_g: decimalText,
    results: z
      .array(
        z.strictObject({
          metal,
          permille: decimalText,
          from: z.enum(resultsFrom),
          /** the assays it rests on */
          entries: z.array(words).min(1),
        }),
      )
      .min(1),
    by: words,
  }),
  /** the final figures no longer count; they stay */
  "melt-reopened": z.strictObject({ reason: words, by: words, second: words }),
};
