import { driftFit } from "./drift.ts";
import type { Expression, Input, Inputs } from "./input.ts";
import { ownScatterFrom, repeats } from "./repeats.ts";
import { gramsOf, type PlainSeries, type Series, type TimedSeries } from "./series.ts";

/** What is known of the balance. All in grams. */
export interface BalanceTraits {
  /** one step d of the display */
  readabilityGrams: number;
  /** standard deviation of one dry reading */
  repeatabilityGrams: number;
  /** degrees of freedom the repeatability was found with; none: taken as known */
  repeatabilityDof?: number;
  /** step of the display when the immersed, risen or flask reading is taken, where it differs (multi-range balance) */
  immersedReadabilityGrams?: number;
  /** standard deviation of one immersed, risen or flask reading; hanger, bubbles and water add to the balance's own */
  immersedRepeatabilityGrams?: number;
  immersedRepeatabilityDof?: number;
  /** half-width of the departure from a straight line */
  linearityGrams: number;
  /** standard uncertainty of the scale factor, relative; it cancels in a density and stays in a mass */
  spanU?: number;
}

/** The traits that hold for one load. */
export interface LoadTraits {
  readabilityGrams: number;
  repeatabilityGrams: number;
  repeatabilityDof: number;
  linearityGrams: number;
}

/** The traits for dry readings, or for those taken in the liquid. */
export function traitsFor(balance: BalanceTraits, where: "dry" | "immersed"): LoadTraits {
  const { readabilityGrams, repeatabilityGrams, linearityGrams } = balance;
  const repeatabilityDof = balance.repeatabilityDof ?? Number.POSITIVE_INFINITY;
  if (where === "dry") return { readabilityGrams, repeatabilityGrams, repeatabilityDof, linearityGrams };
  const own = balance.immersedRepeatabilityGrams;
  return {
    readabilityGrams: balance.immersedReadabilityGrams ?? readabilityGrams,
    repeatabilityGrams: own ?? repeatabilityGrams,
    repeatabilityDof:
      own === undefined ? repeatabilityDof : (balance.immersedRepeatabilityDof ?? Number.POSITIVE_INFINITY),
    linearityGrams,
  };
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
  /** every input with its sign in the load */
  terms: readonly { input: Input; sign: 1 | -1 }[];
}

/**
 * One load as the sum of its named inputs: mean reading with its scatter, the rounding of the display at zero and at
 * load (rectangular ±d/2 each, kept whole however often the display repeats itself), linearity (±), zero drift.
 * Scatter: the readings' own s/√n with n − 1 degrees of freedom from four readings on, else the bench's repeatability/√n.
 */
export function load(inputs: Inputs, name: string, series: Series, traits: LoadTraits): Load {
  const read =
    "timed" in series ? timedLoad(inputs, name, series, traits) : plainLoad(inputs, name, series, traits);
  const half = traits.readabilityGrams / 2;
  const terms = [
    { input: read.scatter, sign: 1 },
    { input: inputs.rectangular(`${name}, resolution at zero`, "g", 0, half), sign: 1 },
    { input: inputs.rectangular(`${name}, resolution at load`, "g", 0, half), sign: 1 },
    { input: inputs.rectangular(`${name}, linearity`, "g", 0, traits.linearityGrams), sign: 1 },
    { input: inputs.between(`${name}, zero drift`, "g", ...read.zeros), sign: -1 },
  ] as const;
  return {
    grams: (a, of) =>
      terms.reduce(
        (total, { input, sign }) => (sign === 1 ? a.plus(total, of(input)) : a.minus(total, of(input))),
        a.of(0),
      ),
    mean: terms.reduce((total, { input, sign }) => total + sign * input.value, 0),
    each: read.each,
    scatter: read.scatter,
    terms,
  };
}

interface Read {
  scatter: Input;
  each: readonly number[];
  zeros: readonly [number, number];
}

function plainLoad(inputs: Inputs, name: string, series: PlainSeries, traits: LoadTraits): Read {
  const each = series.readings.map((text) => gramsOf(text, series.unit));
  const { mean, s, n } = repeats(each);
  const own = n >= ownScatterFrom;
  const u = (own ? s : traits.repeatabilityGrams) / Math.sqrt(n);
  const scatter = inputs.student(
    `${name}, repeatability`,
    "g",
    mean,
    u,
    own ? n - 1 : traits.repeatabilityDof,
  );
  const before = series.zeroBefore === undefined ? 0 : gramsOf(series.zeroBefore, series.unit);
  const after = series.zeroAfter === undefined ? before : gramsOf(series.zeroAfter, series.unit);
  return { scatter, each, zeros: [before, after] };
}

function timedLoad(inputs: Inputs, name: string, series: TimedSeries, traits: LoadTraits): Read {
  const fit = driftFit(series);
  const own = fit.dof >= ownScatterFrom - 1;
  const u = fit.factor * (own ? fit.s : traits.repeatabilityGrams);
  const scatter = inputs.student(
    `${name}, repeatability about the drift`,
    "g",
    fit.grams,
    u,
    own ? fit.dof : traits.repeatabilityDof,
  );
  const each = series.timed.flatMap((look) =>
    "reading" in look ? [gramsOf(look.reading, series.unit)] : [],
  );
  return { scatter, each, zeros: [0, 0] };
}
