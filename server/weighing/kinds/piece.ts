import { z } from "zod";
import { decimalText, json, message, moment, sentence, words } from "../../ledger/shapes.ts";
import { methodNames } from "../../methods/index.ts";
import { temperatureCapture, weightCapture } from "./captures.ts";
import { result, statement } from "./result.ts";

/** What the customer says about the piece; reported as theirs, never as measured. */
const customerSupplied = z.strictObject({
  claim: words.optional(),
  mass_g: decimalText.optional(),
  stones: words.optional(),
  marks: words.optional(),
  note: words.optional(),
});

const pieceOpened = z.strictObject({
  ticket: z.string().max(200),
  description: z.string().max(2000),
  /** id of the metal the piece is said to be */
  claim: z.string().max(100).nullable(),
  method: z.enum(methodNames).optional(),
  pieces: z.number().int().min(1).optional(),
  condition: words.optional(),
  lot: words.optional(),
  operator: words.optional(),
  customer: words.optional(),
  customerSupplied: customerSupplied.optional(),
  receivedAt: moment.optional(),
  /** what the operator was warned of and accepted before wetting */
  cautions: z.array(words).optional(),
  /** the setting of the bench at this piece, as the bench defines it: balance, liquid, air, thermometer */
  settings: json.optional(),
  /** a rule of the customer's, in words */
  decisionRule: words.optional(),
  /** what was agreed before the first reading: the rule for the claim's limits and the confidence it is applied at */
  rule: z
    .strictObject({
      kind: z.enum(["none", "simple", "guard-band", "pass-and-conditional"]),
      /** width of the guard band in expanded uncertainties */
      multiple: decimalText,
      confidence_percent: decimalText,
    })
    .optional(),
  sampling: words.optional(),
});

export const pieceKinds = {
  "piece-opened": pieceOpened,
  capture: z.discriminatedUnion("what", [weightCapture, temperatureCapture]),
  /** an entry is declared void: it stays and stays visible */
  voiding: z.strictObject({ entry: words, reason: sentence, by: words.optional() }),
  result,
  /** replaces what an earlier entry says; the earlier one stays */
  amendment: z.strictObject({
    replaces: words,
    reason: words,
    by: words,
    /** who agreed to it, above a limit of the settings */
    second: words.optional(),
    /** the rule stays what it was before measuring */
    piece: pieceOpened.omit({ rule: true }).partial().optional(),
    result: result.optional(),
  }),
  /** the statement made anew after another test: the record's own request with every test that counts */
  statement: z.strictObject({
    /** the entry whose measurement it states */
    of: words,
    request: z.looseObject({}),
    statement,
    versions: z.record(z.string(), z.string()),
  }),
  /** other evidence of the same piece, such as magnet or size */
  evidence: z.looseObject({ test: words, outcome: z.union([words, message]) }),
  /** the dry mass is not the announced one, and somebody says that it is the right piece all the same */
  "right-piece": z.strictObject({
    /** the readings it rests on */
    of: z.array(words).min(1),
    /** as stated and as read: "31.1 g" */
    announced: words,
    weighed: words,
    reason: words,
    by: words.optional(),
  }),
  note: z.union([
    z.strictObject({ text: words, by: words.optional() }),
    z.strictObject({ message, by: words.optional() }),
  ]),
  "piece-left": z.strictObject({ reason: sentence, by: words.optional() }),
  /** a weighing from before this ledger, taken over from a list; says where it came from */
  "imported-weighing": z.looseObject({
    ticket: z.string(),
    description: z.string(),
    measuredAt: z.string(),
    from: words,
    mass_g: decimalText,
    density_g_cm3: decimalText,
    u_g_cm3: decimalText.optional(),
    claim: z.string().nullable().optional(),
  }),
};
