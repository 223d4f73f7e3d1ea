import { z } from "zod";
import { decimalText, moment, words } from "../ledger/shapes.ts";
import { preciousMetals } from "../metals/precious-metal.ts";
import { intervalEnds, leftOutReasons, sources, statedSources, weighings } from "./source.ts";

const metal = z.enum(preciousMetals);
const currency = z.string().regex(/^[A-Z]{3}$/, { error: "three letters such as EUR" });

/** Low and high are one where somebody states the figure; apart where a density says it. */
const range = z.strictObject({ low: decimalText, expected: decimalText, high: decimalText });

/** What a line of a settlement rests on. */
const restsOn = z.strictObject({
  source: z.enum(sources),
  /** entries that say it */
  entries: z.array(words),
  by: words.optional(),
  reason: words.optional(),
  laboratory: words.optional(),
  report: words.optional(),
  /** what the density leaves open beside it, ‰, and whether both can be true */
  beside: z.strictObject({ low: decimalText, high: decimalText, fits: z.boolean() }).optional(),
  /** tickets of pieces whose density is read as that of other pieces of their claim with a laboratory result */
  like_assayed: z.array(z.string()).min(1).optional(),
  /** tickets of pieces whose record is narrowed so and that are counted over everything their claim allows */
  not_narrowed: z.array(z.string()).min(1).optional(),
});

const line = z.strictObject({
  metal,
  /** one piece, or all pieces of the metal whose density says their fineness */
  pieces: z.array(z.strictObject({ id: words, ticket: z.string() })).min(1),
  dry_g: decimalText,
  deducted_g: decimalText,
  /** the mass counts that it had when it was weighed again */
  mass: z.literal("again").optional(),
  net_g: decimalText,
  permille: range,
  fine_g: range,
  pay: range,
  rests_on: restsOn,
});

const leftOut = z.strictObject({
  id: words,
  ticket: z.string(),
  metal: metal.optional(),
  why: z.enum(leftOutReasons),
  dry_g: decimalText,
  /** of whoever left it out */
  by: words.optional(),
  reason: words.optional(),
});

/** A settlement as it is frozen at closing: decimal text throughout, masses in g, money rounded once in each line. */
export const settled = z.strictObject({
  trust: z.array(z.enum(sources)),
  pays: z.enum(intervalEnds),
  narrowed: z.literal(true).optional(),
  lines: z.array(line),
  left_out: z.array(leftOut),
  metals: z.array(
    z.strictObject({
      metal,
      /** entry of the price */
      price: words,
      currency,
      fine_g: range,
      pay: range,
      fee: decimalText,
      net: range,
    }),
  ),
  totals: z.array(z.strictObject({ currency, low: decimalText, high: decimalText, paid: decimalText })),
});

export const settlementKinds = {
  /** a price is promised for one metal of the lot; the newest of a metal counts, the earlier ones stay */
  "lot-price": z.strictObject({
    metal,
    price: decimalText,
    currency,
    per: z.enum(["g", "ozt", "dwt"]),
    source: words,
    /** when the price was read, as typed, and the moment it means */
    at: words,
    moment: moment.optional(),
    ratePercent: decimalText,
    fee: decimalText,
    rounding: z.enum(["down", "half-even", "up"]),
    /** the most fine metal it is promised for, g */
    covers_g: decimalText.optional(),
    by: words.optional(),
    /** why an earlier price was changed */
    reason: words.optional(),
    second: words.optional(),
  }),
  /** what settles a piece beside its density; merged field by field, the newest word on each counts */
  "lot-terms": z.strictObject({
    piece: words,
    /** stones, thread and other parts that are not metal, g */
    deducted_g: decimalText.optional(),
    fineness: z
      .strictObject({
        permille: decimalText,
        saidBy: z.enum(statedSources),
        /** the metal of the claim when left out */
        metal: metal.optional(),
      })
      .optional(),
    /** words on the fineness that no longer count */
    withdrawn: z.array(z.strictObject({ saidBy: z.enum(statedSources), metal })).optional(),
    by: words.optional(),
    reason: words.optional(),
    second: words.optional(),
  }),
  /** a named person decides whether a piece is paid for that its weighing leaves out */
  "settlement-decision": z.strictObject({
    piece: words,
    pays: z.boolean(),
    mass: z.enum(weighings),
    reason: words,
    by: words,
    second: words.optional(),
  }),
  /** the settlement of a closing as it was printed; the PDF is kept beside the ledger under its hash */
  "settlement-printed": z.strictObject({
    /** entry of the closing */
    closing: words,
    language: z.string().regex(/^[a-z]{2}$/, { error: "two small letters, such as de" }),
    /** SHA-256 */
    pdf: z.string().regex(/^[0-9a-f]{64}$/, { error: "64 hexadecimal digits" }),
    program: words,
    by: words.optional(),
  }),
  /** who is believed before whom in this lot, and what is paid of an interval */
  "settlement-trust": z.strictObject({
    trust: z.array(z.enum(sources)).length(sources.length),
    pays: z.enum(intervalEnds),
    /** laboratory results on other pieces of a claim may narrow what a density says */
    narrowed: z.literal(true).optional(),
    reason: words,
    by: words,
    second: words.optional(),
  }),
};
