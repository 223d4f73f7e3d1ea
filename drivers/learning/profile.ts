import { z } from "zod";
import { isMessage, type Message } from "../../calibration/message.ts";
import { massUnits } from "../../calibration/units.ts";

/** Ways of working out a check; the cyclic ones by polynomial, start value and direction. */
const checkKinds = [
  "xor",
  "sum",
  "sum-to-zero",
  "sum-mod-100",
  "crc-8-07",
  "crc-8-31-reflected",
  "crc-16-1021-ffff",
  "crc-16-1021-0000",
  "crc-16-8005-ffff-reflected",
  "crc-16-8005-0000-reflected",
] as const;

/** What a mark beside the number was seen to go with. It has no meaning of its own. */
const mark = z.strictObject({
  text: z.string().describe("the characters as received; blanks count"),
  means: z
    .enum(["steady", "moving", "nothing", "unsure"])
    .describe("what it went with: rest, motion, neither, or too seldom seen to say"),
  unit: z.boolean().describe("true when these characters are the unit"),
  sign: z
    .enum(["plus", "minus"])
    .optional()
    .describe("the sign of the number beside it, where this mark tells it"),
  upTo: z
    .number()
    .nonnegative()
    .optional()
    .describe("it was seen beside numbers up to this size only, and beside a larger one it is not known"),
  label: z.enum(["net", "gross"]).optional().describe("what the weight is called by it"),
});

const numberPart = z.strictObject({
  is: z.literal("number"),
  width: z.int().min(1).max(60).nullable().describe("sign, padding and digits together; null when free"),
  align: z.enum(["right", "left"]),
  padLeast: z.int().min(0).max(60).describe("fewest blanks seen before the digits"),
  padMost: z.int().min(0).max(60),
  sign: z.enum(["pinned-left", "beside-digits"]),
  signAt: z.int().min(0).max(60).describe("column of a pinned sign within the field"),
  plus: z.enum(["always", "sometimes", "never"]).describe("whether a plus is written"),
  decimalMark: z.enum([".", ",", "none"]),
  grouping: z.enum([".", ",", "'", "\u2019", " ", "none"]).describe("mark of thousands"),
  places: z.array(z.int().min(0).max(12)).min(1).describe("decimals seen behind the mark"),
  impliedPlaces: z
    .int()
    .min(0)
    .max(12)
    .nullable()
    .describe("decimals where no mark is sent, told by the owner"),
  digits: z.int().min(1).max(20).nullable().describe("fixed count of digits when padded with zeros"),
  auxiliary: z.boolean().describe("the last digit stands in brackets"),
  fill: z.string().length(1).optional().describe("fills the field in place of blanks"),
  wraps: z
    .array(z.strictObject({ before: z.string(), after: z.string(), minus: z.boolean() }))
    .min(1)
    .optional()
    .describe("what stands right before and behind the digits: brackets, a sign behind"),
  minus: z.enum(["read", "refused"]).optional().describe("refused: what a minus looks like was not seen"),
  shift: z
    .int()
    .min(-12)
    .max(12)
    .optional()
    .describe("the value is that of the digits times ten to this power"),
  exponent: z.boolean().optional().describe("a power of ten follows the digits, as in E-03"),
  outPlaces: z.int().min(0).max(12).optional().describe("decimals of the display, where the line has others"),
  mostDigits: z.int().min(1).optional().describe("leading digits beyond these were zero always, and must be"),
  noZero: z.boolean().optional().describe("a zero before the mark of decimals is left out, as in .5"),
  pounds: z.boolean().optional().describe("pounds and ounces, read in oz"),
});

const part = z.discriminatedUnion("is", [
  z.strictObject({ is: z.literal("text"), text: z.string() }),
  z.strictObject({ is: z.literal("mark"), marks: z.array(mark).min(1) }),
  z.strictObject({
    is: z.literal("digits"),
    least: z.int().min(1),
    most: z.int().max(40),
  }),
  z.strictObject({ is: z.literal("other-number").describe("a number that is not the weight") }),
  z.strictObject({ is: z.literal("pad-to"), total: z.int().min(1).max(400) }),
  numberPart,
]);

const hex = z.string().regex(/^([0-9a-f]{2})+$/);

const ending = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("characters"), hex: hex.describe("the bytes that end a line") }),
  z.strictObject({
    kind: z.literal("frame"),
    start: hex,
    end: hex,
    behind: z.int().min(0).max(8).describe("bytes that follow the closing character, check included"),
  }),
  z.strictObject({ kind: z.literal("silence"), ms: z.int().min(5).max(2000) }),
  z.strictObject({ kind: z.literal("any") }),
  z.strictObject({ kind: z.literal("length"), bytes: z.int().min(4).max(64), start: hex }),
]);

const check = z.strictObject({
  kind: z.enum(checkKinds),
  from: z.int().min(0).max(4).describe("first byte of the line that is counted"),
  gap: z.int().min(0).max(2).describe("bytes right before the check that are not counted"),
  behind: z.int().min(0).max(6).describe("bytes of the line that follow the check"),
  written: z.enum(["byte", "byte-low-first", "hex-upper", "hex-lower", "decimal"]),
});

const field = z.enum([
  "bytes",
  "line-end",
  "check",
  "block",
  "number",
  "sign",
  "width",
  "decimals",
  "unit",
  "motion",
  "overload",
  "other-lines",
  "cadence",
  "coverage",
]);

const message = z
  .custom<Message>(isMessage)
  .meta({ type: "object", description: "what was found: code and params" });

const finding = z.union([
  z.strictObject({ field, sure: z.boolean(), message }),
  z.strictObject({
    field,
    sure: z.boolean(),
    says: z.string().describe("the finding in English, as earlier versions kept it"),
  }),
]);

const sample = z.strictObject({
  raw: z.string().describe("the line as received, line end included, control characters escaped"),
  reading: z
    .strictObject({
      text: z.string(),
      unit: z.enum(massUnits),
      steady: z.enum(["steady", "moving", "not-told"]),
    })
    .nullable(),
  event: z.string().nullable().describe("the kind of event, where the line is no reading"),
});

/** Everything learned about the lines of one balance. Versioned; carries its own test in `samples`. */
export const profileSchema = z.strictObject({
  format: z.literal(1),
  name: z.string().min(1).max(120),
  learnedAt: z.iso.datetime().nullable(),
  parity: z
    .enum(["none", "even", "odd", "mark"])
    .describe("what the eighth bit carries as received; anything but none is taken off"),
  ending,
  check: check.nullable(),
  binary: z
    .strictObject({
      at: z.int().min(0).max(63).describe("first byte of the number within the frame, check taken off"),
      size: z.int().min(2).max(5),
      writes: z.enum(["high-byte-first", "low-byte-first", "packed-decimals", "packed-decimals-low-first"]),
    })
    .optional()
    .describe("the number of a frame of bytes; absent where lines are text"),
  blockLines: z.int().min(1).max(12).describe("lines that together make one reading"),
  unit: z.strictObject({ unit: z.enum(massUnits), from: z.enum(["line", "owner"]) }),
  weight: z.array(part).min(1),
  restByNumber: z
    .boolean()
    .optional()
    .describe("a number is sent at rest only; while it moves the line carries none; absent means no"),
  others: z.array(z.strictObject({ kind: z.enum(["overload", "not-a-weight"]), line: z.array(part).min(1) })),
  cadence: z.strictObject({
    byItself: z.boolean(),
    linesPerSecond: z.number().positive().nullable(),
  }),
  findings: z.array(finding),
  samples: z.array(sample).min(1),
});

export type Profile = z.infer<typeof profileSchema>;
export type Part = z.infer<typeof part>;
export type NumberPart = z.infer<typeof numberPart>;
export type Mark = z.infer<typeof mark>;
export type Ending = z.infer<typeof ending>;
export type Check = z.infer<typeof check>;
export type Finding = Extract<z.infer<typeof finding>, { message: Message }>;
/** A finding as a profile holds it; earlier versions kept a sentence. */
export type StoredFinding = Profile["findings"][number];
export type Sample = z.infer<typeof sample>;
export type Parity = Profile["parity"];

/** The published schema of a profile, as JSON Schema. */
export function profileJsonSchema() {
  return z.toJSONSchema(profileSchema, { unrepresentable: "any" });
}
