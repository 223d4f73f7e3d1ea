import { sum } from "./arithmetic.ts";
import type { Expression, Input, Inputs } from "./input.ts";
import { ownScatterFrom, repeats } from "./repeats.ts";
import { type MassUnit, toGrams } from "./units.ts";

/** Readings of one load, as the display wrote them. */
export interface Series {
  /** decimal texts in `unit` */
  readings: readonly string[];
  unit: MassUnit;
  /** the display with the load away, before and after, same unit; a tared balance that was not looked at again has none */
  zeroBefore?: string;
  zeroAfter?: string;
}

/** What is known of the balance. All in grams. */
export interface BalanceTraits {
  /** one step d of the display */
  readabilityGrams: number;
  /** standard deviation of one dry reading */
  repeatabilityGrams: number;
  /** step of the display when the immersed, risen or flask reading is taken, where it differs (multi-range balance) */
  immersedReadabilityGrams?: number;
  /** standard deviation of one immersed, risen or flask reading; hanger, bubbles and water add to the balance's own */
  immersedRepeatabilityGrams?: number;
  /** half-width of the departure from a straight line */
  linearityGrams: number;
  /** standard uncertainty of the scale factor, relative; it cancels in a density and stays in a mass */
  spanU?: number;
}

/** A weighed load: its expression in grams and the numbers it came from. */
export interface Load {
  grams: Expression;
  /** mean of the readings less the zero, g */
  mean: number;
  /** the readings in grams, in order */
  each: readonly number[];
  /** the input that carries the scatter of the readings */
  scatter: Input;
  /** every input that is simply added to the reading, or taken off it, the scatter first */
  terms: readonly Input[];
}

/** Readings in grams as numbers, exact to the last place of the display. */
export function inGrams(series: Series): number[] {
  return series.readings.map((text) => Number(toGrams(text, series.unit)));
}

function zeroInGrams(text: string | undefined, unit: MassUnit): number {
  return text === undefined ? 0 : Number(toGrams(text, unit));
}

/**
 * One load as the sum of its named inputs: mean reading with its scatter, the rounding of the display at zero and at
 * load (rectangular ±d/2 each, kept whole however often the display repeats itself), linearity (±), zero drift.
 * Scatter: the readings' own s/√n with n − 1 degrees of freedom from four readings on, else the bench's repeatability/√n.
 */
export function load(
  inputs: Inputs,
  name: string,
  series: Series,
  traits: { readabilityGrams: number; repeatabilityGrams: number; linearityGrams: number },
): Load {
  const each = inGrams(series);
  const { mean, s, n } = repeats(each);
  const before = zeroInGrams(series.zeroBefore, series.unit);
  const after = series.zeroAfter === undefined ? before : zeroInGrams(series.zeroAfter, series.unit);
  const scatter =
    n >= ownScatterFrom
      ? inputs.student(`${name}, repeatability`, "g", mean, s / Math.sqrt(n), n - 1)
      : inputs.normal(`${name}, repeatability`, "g", mean, traits.repeatabilityGrams / Math.sqrt(n));
  const d = traits.readabilityGrams;
  const terms = [
    scatter,
    inputs.rectangular(`${name}, resolution at zero`, "g", 0, d / 2),
    inputs.rectangular(`${name}, resolution at load`, "g", 0, d / 2),
    inputs.rectangular(`${name}, linearity`, "g", 0, traits.linearityGrams),
  ];
  const zero = inputs.between(`${name}, zero drift`, "g", before, after);
  return {
    grams: (a, of) => a.minus(sum(a, terms.map(of)), of(zero)),
    mean: mean - zero.value,
    each,
    scatter,
    terms: [...terms, zero],
  };
}
