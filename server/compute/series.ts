import { z } from "zod";
import { isDecimal } from "../../calibration/decimal.ts";
import { type Lifted, lifts, type Series, zeroings } from "../../calibration/series.ts";
import { type MassUnit, massUnits } from "../../calibration/units.ts";
import { omitUndefined } from "./omit-undefined.ts";

function describe(input: unknown): string {
  return input === undefined ? "nothing" : (JSON.stringify(input) ?? String(input));
}

/** A reading as the display wrote it. A JSON number is refused: 31.10 would arrive as 31.1 and lose its last place. */
const reading = z
  .string({
    error: ({ input }) =>
      typeof input === "number"
        ? `The reading ${input} is a JSON number, which forgets how many decimals the display showed. Write it as text, such as "${input}", with every digit shown.`
        : `A reading is text with the digits of the display, such as "31.1035", not ${describe(input)}.`,
  })
  .refine((text) => isDecimal(text), {
    error: ({ input }) =>
      `"${String(input)}" is not a decimal number. Right: digits with one point and no unit, such as "31.1035"; the unit stands beside the readings as "unit".`,
  });

const unit = z.enum(massUnits as [MassUnit, ...MassUnit[]]).default("g");

const look = z.union(
  [
    z.strictObject({ at_s: z.number(), zero: reading }),
    z.strictObject({ at_s: z.number(), reading: reading }),
  ],
  {
    error:
      'A look is {"at_s","zero"} with the load away or {"at_s","reading"} with it: seconds as a number, the display as text.',
  },
);

/** Readings of one load; or, for a drift fit, zeros and readings with their times. */
export const series = z
  .strictObject({
    readings: z.array(reading).min(1, 'Give at least one reading, such as ["31.1035"].').optional(),
    timed: z.array(look).min(3, "A drift fit needs at least three looks.").optional(),
    lifted: z.enum(lifts).optional(),
    unit,
    zero_before: reading.optional(),
    zero_after: reading.optional(),
    zeroed: z
      .enum(zeroings)
      .optional()
      .describe(
        "each: the balance is zeroed before every reading, so that the rounding of its zero averages out with them; once: one zero serves all readings; each when left out",
      ),
  })
  .superRefine((given, ctx) => {
    const say = (path: string, message: string) => ctx.addIssue({ code: "custom", path: [path], message });
    if (!given.readings && !given.timed)
      say("readings", 'Give the readings of the display as text, such as {"readings":["31.1035"]}.');
    if (given.readings && given.timed)
      say("timed", "Give either readings or timed looks, not both for one load.");
    if (given.readings && given.lifted)
      say("lifted", "How the piece was lifted matters to timed looks only; leave it out beside readings.");
    if (given.timed && given.zeroed) say("zeroed", "Timed looks hold their own zeros; leave zeroed out.");
    if (given.timed && (given.zero_before || given.zero_after))
      say("timed", "Timed looks hold their own zeros; leave zero_before and zero_after out.");
  });

/**
 * The series a request gives for one load. `lifted`: what lifting the piece does to the zero where the request does not
 * say.
 */
export function seriesOf(given: z.output<typeof series>, lifted: Lifted = "kept"): Series {
  const { unit } = given;
  if (given.timed) {
    const timed = given.timed.map((look) => {
      const { at_s: atSeconds } = look;
      return "zero" in look ? { atSeconds, zero: look.zero } : { atSeconds, reading: look.reading };
    });
    return { timed, lifted: given.lifted ?? lifted, unit };
  }
  return omitUndefined({
    readings: given.readings ?? [],
    unit,
    zeroBefore: given.zero_before,
    zeroAfter: given.zero_after,
    zeroed: given.zeroed,
  });
}
