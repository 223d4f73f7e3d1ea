import { z } from "zod";
import { isDecimal } from "../../calibration/decimal.ts";
import { type Lifted, lifts, type Series, zeroings } from "../../calibration/series.ts";
import { massUnits } from "../../calibration/units.ts";
import { balance } from "./balance.ts";
import { omitUndefined } from "./omit-undefined.ts";
import { errorCode, type RequestCode } from "./request-error.ts";

const noDecimal: RequestCode = "compute.request.reading-no-decimal";

/** A reading as the display wrote it. A JSON number is refused: 31.10 would arrive as 31.1 and lose its last place. */
const reading = z
  .string({
    error: ({ input }) =>
      errorCode(
        typeof input === "number" ? "compute.request.reading-number" : "compute.request.reading-no-text",
      ),
  })
  .refine((text) => isDecimal(text), {
    error: errorCode(noDecimal),
  });

const unit = z.enum(massUnits).default("g");

const timedReading = z.union(
  [
    z.strictObject({ at_s: z.number(), zero: reading }),
    z.strictObject({ at_s: z.number(), reading: reading }),
  ],
  {
    error: errorCode("compute.request.look"),
  },
);

const keys = {
  readings: z.array(reading).min(1, errorCode("compute.request.readings-none")).optional(),
  timed: z.array(timedReading).min(3, errorCode("compute.request.looks-few")).optional(),
  lifted: z.enum(lifts).optional(),
  unit,
  zero_before: reading.optional(),
  zero_after: reading.optional(),
  drift_u_g: z
    .number()
    .nonnegative()
    .optional()
    .describe(
      "standard uncertainty in g of what each reading might still have drifted when it was taken; common to all of them, so that repeats do not lessen it",
    ),
  zeroed: z
    .enum(zeroings)
    .optional()
    .describe(
      "each: the balance is zeroed before every reading, so that the rounding of its zero averages out with them; once: one zero serves all readings; each when left out",
    ),
};

type Given = Pick<
  z.output<z.ZodObject<typeof keys>>,
  "readings" | "timed" | "lifted" | "zero_before" | "zero_after" | "zeroed" | "drift_u_g"
>;

function wellFormed(given: Given, ctx: z.RefinementCtx): void {
  const say = (path: string, code: RequestCode) =>
    ctx.addIssue({ code: "custom", path: [path], message: errorCode(code) });
  if (!given.readings && !given.timed) say("readings", "compute.request.readings-missing");
  if (given.readings && given.timed) say("timed", "compute.request.readings-and-looks");
  if (given.readings && given.lifted) say("lifted", "compute.request.lifted-without-looks");
  if (given.timed && given.zeroed) say("zeroed", "compute.request.looks-hold-zeros");
  if (given.timed && (given.zero_before || given.zero_after))
    say("timed", "compute.request.looks-hold-zeros");
}

/** Readings of one load; or, for a drift fit, zeros and readings with their times. */
export const series = z.strictObject(keys).superRefine(wellFormed);

/** Readings in the liquid, which may have been taken on another balance than the dry ones. */
export const wetSeries = z
  .strictObject({
    ...keys,
    balance: balance
      .optional()
      .describe("the balance these readings were taken on, where it is not that of the dry ones"),
  })
  .superRefine(wellFormed);

/**
 * The series a request gives for one load. `lifted`: what lifting the piece does to the zero where the request does not
 * say.
 */
export function seriesOf(given: z.output<typeof series>, lifted: Lifted = "kept"): Series {
  const { unit } = given;
  if (given.timed) {
    const timed = given.timed.map((one) => {
      const { at_s: atSeconds } = one;
      return "zero" in one ? { atSeconds, zero: one.zero } : { atSeconds, reading: one.reading };
    });
    return omitUndefined({ timed, lifted: given.lifted ?? lifted, unit, driftUGrams: given.drift_u_g });
  }
  return omitUndefined({
    readings: given.readings ?? [],
    unit,
    zeroBefore: given.zero_before,
    zeroAfter: given.zero_after,
    zeroed: given.zeroed,
    driftUGrams: given.drift_u_g,
  });
}
