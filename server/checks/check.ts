import { isDecimal } from "../../calibration/decimal.ts";
import type { Message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { repeats } from "../../calibration/repeats.ts";

/** What can be checked of a bench. */
export type CheckKind =
  | "repeatability"
  | "immersed-repeatability"
  | "linearity"
  | "eccentricity"
  | "zero-return"
  | "check-weight"
  | "ice-point"
  | "thermometer"
  | "reference-piece"
  | "trainee";

/** Who checked what and when; `at` is ISO 8601 in UTC with milliseconds, so that text order is time order. */
export interface CheckedBy {
  at: string;
  by: string;
  /** the balance or thermometer, by the name the bench gives it */
  of: string;
}

/** The outcome of one check, ready for the ledger: plain data, numbers in the unit of their name. */
export interface CheckResult<Found = unknown> extends CheckedBy {
  kind: CheckKind;
  passed: boolean;
  /** what was found and why that passes or fails, with the values; a sentence in an entry of earlier versions */
  says: Message | string;
  /** what to do next */
  todo: Message | string;
  found: Found;
}

/** Degrees of freedom as JSON can hold them: null stands for infinitely many. */
export type Dof = number | null;

/** Standard deviation of a sample, n − 1 in the divisor. NaN below two values. */
export function sampleDeviation(values: readonly number[]): number {
  return values.length < 2 ? Number.NaN : repeats(values).s;
}

/**
 * What the display alone scatters: two roundings of d/√12 each, at zero and at load, so 0.41 d. A display that shows
 * the same figures again and again has hidden its scatter below this, not lost it.
 */
export const scatterPerReadability = 1 / Math.sqrt(6);

/**
 * Standard uncertainty of a scale that is not corrected by what weights found, relative: the error as the half-width of a
 * rectangle, and how well it is known.
 */
export function spanUOf(spanError: number, u: number): number {
  return Math.hypot(spanError / Math.sqrt(3), u);
}

/** A reading as shown, in g. Throws Refusal when the text is no decimal number. */
export function shownGrams(text: string): number {
  if (!isDecimal(text)) throw new Refusal("form.number.not-a-number", { typed: text });
  return Number(text);
}

/** Throws Refusal when a check has too few readings to say anything. */
export function atLeast(least: number, { length: count }: readonly unknown[]): void {
  if (count < least) throw new Refusal("bench-check.too-few", { least, count, missing: least - count });
}
