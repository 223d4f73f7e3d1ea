import { z } from "zod";
import { isDecimal } from "../../../calibration/decimal.ts";

/** How one cell of a list is read: its text in, its value out, or an issue that says what would be right. */
export type Cell = z.ZodType<unknown, string>;

/** Text that must not be empty. */
export const text = z.string().trim().min(1, { error: "must not be empty" }).max(2000);

/** Text or nothing. */
export const optionalText = z
  .string()
  .trim()
  .max(2000)
  .transform((value) => (value === "" ? undefined : value));

/**
 * Decimal text with a point; a comma is taken for one where it cannot mean thousands. Spaces around are dropped,
 * decimals are kept: 31,10 becomes 31.10.
 */
export const decimal = z.string().transform((given, context) => {
  const value = given.trim();
  const ambiguous = /^[+-]?\d{1,3},\d{3}$/.test(value);
  const pointed = value.includes(".") ? value : value.replace(",", ".");
  if (isDecimal(pointed) && !ambiguous) return pointed;
  context.addIssue({
    code: "custom",
    message: ambiguous
      ? `could be thousands or decimals; write ${value.replace(",", ".")} or ${value.replace(",", "")}`
      : "is no decimal number; write it as 31.1035, without unit or thousands",
  });
  return z.NEVER;
});

export const optionalDecimal = z
  .string()
  .transform((value) => (value.trim() === "" ? undefined : value))
  .pipe(z.union([z.undefined(), decimal]));

/** A decimal number above zero, as text. */
export const positiveDecimal = decimal.refine((value) => Number(value) > 0, { error: "must be above zero" });

/** A number above zero. */
export const positiveNumber = positiveDecimal.transform(Number);
export const optionalPositiveNumber = z
  .string()
  .transform((value) => (value.trim() === "" ? undefined : value))
  .pipe(z.union([z.undefined(), positiveNumber]));

/** A day or a moment by ISO 8601, given back as a moment in UTC. Other orders of day and month are not guessed. */
export const isoMoment = z.string().transform((given, context) => {
  const value = given.trim();
  const shape = /^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2}))?$/;
  if (shape.test(value) && isRealDay(value.slice(0, 10)) && !Number.isNaN(Date.parse(value)))
    return new Date(value).toISOString();
  context.addIssue({
    code: "custom",
    message: "is no date by ISO 8601; write 2024-03-31, or 2024-03-31T14:05:00Z with the zone",
  });
  return z.NEVER;
});

/** 30 February reads as 1 March when it is not looked at. */
function isRealDay(day: string): boolean {
  const midnight = new Date(`${day}T00:00:00Z`);
  return !Number.isNaN(midnight.getTime()) && midnight.toISOString().startsWith(day);
}

/** One of a few words. */
export function oneOf<const Words extends readonly [string, ...string[]]>(words: Words) {
  return z
    .string()
    .trim()
    .pipe(z.enum(words, { error: `must be one of ${words.join(", ")}` }));
}
