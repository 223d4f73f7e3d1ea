import { type Agreement, agreement, type Expected, levels } from "./agreement.ts";
import { sum } from "./arithmetic.ts";
import { type Departure, departureAt, type Term } from "./departure.ts";
import { oneRounding, roundingLeft, sameByChance, withRoundings } from "./display-step.ts";
import { driftFit } from "./drift.ts";
import type { Expression, Input, Inputs } from "./input.ts";
import { ownScatterFrom, repeats } from "./repeats.ts";
import { coarsestPlaceGrams, gramsOf, type PlainSeries, type Series, type TimedSeries } from "./series.ts";
import { withoutZeroDrift } from "./zero-drift.ts";

/** What is known of the balance. All in grams. */
export interface BalanceTraits {
  /** one step d of the display */
  readabilityGrams: number;
  /** standard deviation of one dry reading */
  repeatabilityGrams: number;
  /** degrees of freedom the repeatability was found with; none: taken as known */
  repeatabilityDof?: number;
  /** nobody stated or measured it; the immersed one alike */
  repeatabilityAssumed?: boolean;
  /** step of the display when the immersed, risen or flask reading is taken, where it differs (multi-range balance) */
  immersedReadabilityGrams?: number;
  /** standard deviation of one immersed, risen or flask reading; hanger, bubbles and water add to the balance's own */
  immersedRepeatabilityGrams?: number;
  immersedRepeatabilityDof?: number;
  immersedRepeatabilityAssumed?: boolean;
  /** half-width of the departure from a straight line */
  linearityGrams: number;
  /** standard uncertainty of the scale factor, relative; it cancels in a density and stays in a mass */
  spanU?: number;
  /** load over which the departure from a straight line bends; the heaviest load when absent */
  capacityGrams?: number;
  /** standard uncertainty per gram of a load that is set on the pan by hand, EURAMET cg-18 7.1 [clause from memory] */
  eccentricityPerGram?: number;
  /** see LoadTraits */
  paired?: boolean;
}

/** What a balance needs to be told from the first one of a measurement. */
export interface SecondBalance {
  /** span error of its own and of the first one */
  span: Input;
  firstSpan: Input;
}

/** The traits that hold for one load. */
export interface LoadTraits {
  readabilityGrams: number;
  repeatabilityGrams: number;
  repeatabilityDof: number;
  repeatabilityAssumed: boolean;
  departure: Departure;
  /** of a load set on the pan by hand; 0 for one that hangs from the middle or lies in a vessel that stays */
  eccentricityPerGram: number;
  /** where the load was weighed on another balance than the dry piece */
  second?: SecondBalance;
  /** readings were taken in pairs with those of another load: what moves both is no disagreement */
  paired?: boolean;
}

/** The traits for dry readings, set on the pan, or for those taken in the liquid. */
export function traitsFor(
  balance: BalanceTraits,
  where: "dry" | "immersed",
  second?: SecondBalance,
): LoadTraits {
  const { readabilityGrams, repeatabilityGrams, paired = false } = balance;
  const repeatabilityDof = balance.repeatabilityDof ?? Number.POSITIVE_INFINITY;
  const departure = {
    of: second ? "second balance, " : "",
    halfWidthGrams: balance.linearityGrams,
    capacityGrams: balance.capacityGrams ?? Number.POSITIVE_INFINITY,
  };
  const shared = { departure, paired, ...(second && { second }) };
  if (where === "dry")
    return {
      ...shared,
      readabilityGrams,
      repeatabilityGrams,
      repeatabilityDof,
      repeatabilityAssumed: balance.repeatabilityAssumed ?? false,
      eccentricityPerGram: balance.eccentricityPerGram ?? 0,
    };
  const own = balance.immersedRepeatabilityGrams;
  return {
    ...shared,
    readabilityGrams: balance.immersedReadabilityGrams ?? readabilityGrams,
    repeatabilityGrams: own ?? repeatabilityGrams,
    repeatabilityDof:
      own === undefined ? repeatabilityDof : (balance.immersedRepeatabilityDof ?? Number.POSITIVE_INFINITY),
    repeatabilityAssumed:
      (own === undefined ? balance.repeatabilityAssumed : balance.immersedRepeatabilityAssumed) ?? false,
    eccentricityPerGram: 0,
  };
}

/** A weighed load: its expression in grams and the numbers it came from. */
export interface Load {
  grams: Expression;
  /** mean of the readings less the zero, g */
  mean: number;
  /** the readings in grams, in order; about the drift where it was fitted */
  each: readonly number[];
  agreement: Agreement;
  /** the input that carries the scatter of the readings */
  scatter: Input;
  /** every input with its factor in the load */
  terms: readonly Term[];
}

/**
 * One load as the sum of its named inputs: mean reading with its scatter, the rounding of the display at zero and at
 * load, departure from a straight line, place on the pan, zero drift.
 *
 * Scatter: the readings' own s/√n with n − 1 degrees of freedom from four readings on, else the stated repeatability/√n.
 * Below four, readings that scatter more than stated have their own s/√n, which is the stated one times the Birge ratio
 * √(χ²/(n − 1)) (Birge 1932, Phys. Rev. 40, 207 [from memory]); where that was only assumed, their s is known with n − 1
 * degrees of freedom and two of the assumption, which is good to half of itself (JCGM 100:2008, G.4.2). Readings that disagree (agreement.ts) have at least half
 * their span, so that a reading that contradicts the others never makes the mean more certain. A display that stood still
 * although its readings should scatter counts as one reading.
 *
 * Drift at reading: what a reading might still have moved has one sign and one cause, so repeats do not lessen it.
 *
 * Rounding: ±d/2 each, rectangular, for one reading. Of several, what their scatter averages out is left out of it: below
 * four it falls with √n, from four on it stands in their scatter already (display-step.ts). A display that repeats itself
 * keeps both roundings whole. Readings that show coarser places than the stated step are taken as coarse as they show.
 */
export function load(inputs: Inputs, name: string, series: Series, stated: LoadTraits): Load {
  const shown = coarsestPlaceGrams(series);
  const traits = shown > stated.readabilityGrams ? { ...stated, readabilityGrams: shown } : stated;
  const read = "timed" in series ? timedRead(name, series, traits) : plainRead(name, series, traits);
  const scatter = inputs.student(read.scatter.name, "g", read.grams, read.scatter.u, read.scatter.dof);
  const zero = inputs.between(`${name}, zero drift`, "g", ...read.zeros);
  const mean = read.grams - zero.value;
  const offCentre = traits.eccentricityPerGram * Math.abs(mean) * Math.sqrt(3);
  const { driftUGrams: drift = 0 } = series;
  const terms: readonly Term[] = [
    { input: scatter, factor: 1 },
    { input: rounded(inputs, `${name}, resolution at zero`, read.zeroRoundingU), factor: 1 },
    { input: rounded(inputs, `${name}, resolution at load`, read.loadRoundingU), factor: 1 },
    ...(drift > 0 ? [{ input: inputs.normal(`${name}, drift at reading`, "g", 0, drift), factor: 1 }] : []),
    ...departureAt(inputs, traits.departure, mean),
    ...(offCentre > 0
      ? [{ input: inputs.rectangular(`${name}, place on the pan`, "g", 0, offCentre), factor: 1 }]
      : []),
    { input: zero, factor: -1 },
  ];
  const { second } = traits;
  return {
    grams: (a, of) => {
      const total = sum(
        a,
        terms.map(({ input, factor }) => (factor === 1 ? of(input) : a.times(of(input), a.of(factor)))),
      );
      if (!second) return total;
      const error = (span: Input) => a.plus(a.of(1), of(span));
      return a.over(a.times(total, error(second.span)), error(second.firstSpan));
    },
    mean,
    each: read.each,
    agreement: read.agreement,
    scatter,
    terms,
  };
}

const rounded = (inputs: Inputs, name: string, u: number) =>
  inputs.rectangular(name, "g", 0, u * Math.sqrt(3));

interface Read {
  grams: number;
  scatter: { name: string; u: number; dof: number };
  zeroRoundingU: number;
  loadRoundingU: number;
  each: readonly number[];
  agreement: Agreement;
  zeros: readonly [number, number];
}

function plainRead(name: string, series: PlainSeries, traits: LoadTraits): Read {
  const each = series.readings.map((text) => gramsOf(text, series.unit));
  const { mean, n } = repeats(each);
  const before = series.zeroBefore === undefined ? 0 : gramsOf(series.zeroBefore, series.unit);
  const after = series.zeroAfter === undefined ? before : gramsOf(series.zeroAfter, series.unit);
  const found = agreement(withoutZeroDrift(each, after - before), expectedOf(traits));
  const once = series.zeroed === "once";
  return {
    grams: mean,
    ...uncertaintyOf(`${name}, repeatability`, traits, {
      found,
      factor: 1 / Math.sqrt(n),
      dof: n - 1,
      own: n >= ownScatterFrom,
      once,
    }),
    each,
    agreement: found,
    zeros: [before, after],
  };
}

function timedRead(name: string, series: TimedSeries, traits: LoadTraits): Read {
  const fit = driftFit(series);
  const each = fit.residuals.map((residual) => fit.grams + residual);
  const found = { ...agreement(each, expectedOf(traits)), s: fit.s };
  return {
    grams: fit.grams,
    ...uncertaintyOf(`${name}, repeatability about the drift`, traits, {
      found,
      factor: fit.factor,
      dof: fit.dof,
      own: fit.dof >= ownScatterFrom - 1,
      once: false,
    }),
    each,
    agreement: found,
    zeros: [0, 0],
  };
}

/** What one reading should scatter by what is stated: its repeatability and both roundings. */
export function expectedOf(
  traits: Pick<LoadTraits, "readabilityGrams" | "repeatabilityGrams" | "repeatabilityDof">,
): Expected {
  const { readabilityGrams, repeatabilityGrams, repeatabilityDof } = traits;
  return {
    scatterGrams: withRoundings(repeatabilityGrams, readabilityGrams),
    dof: repeatabilityDof,
    fine: repeatabilityGrams >= readabilityGrams,
  };
}

/** Degrees of freedom of a scatter that is good to half of itself: 1/(2·½²). */
const assumedDof = 2;

/** Scatter and roundings of a mean; `factor`: its u over the scatter of one reading, 1/√n for plain repeats. */
function uncertaintyOf(
  name: string,
  {
    repeatabilityGrams,
    repeatabilityDof,
    repeatabilityAssumed,
    readabilityGrams: d,
    paired = false,
  }: LoadTraits,
  {
    found,
    factor,
    dof,
    own,
    once,
  }: { found: Agreement; factor: number; dof: number; own: boolean; once: boolean },
): Pick<Read, "scatter" | "zeroRoundingU" | "loadRoundingU"> {
  const n = found.count;
  // a display that stood still where it should have moved was looked at once
  if (found.span === 0 && sameByChance(n, repeatabilityGrams, d) < levels.stops)
    return {
      scatter: { name, u: repeatabilityGrams, dof: repeatabilityDof },
      zeroRoundingU: oneRounding(d),
      loadRoundingU: oneRounding(d),
    };
  const birge = !own && found.s > withRoundings(repeatabilityGrams, d);
  const birgeDof = repeatabilityAssumed ? dof + assumedDof : Number.POSITIVE_INFINITY;
  const observed = own || birge;
  const scatterU = factor * (observed ? found.s : repeatabilityGrams);
  const apart = paired || found.verdict === "agree" ? 0 : found.span / 2;
  // what pairs share moves both displays alike and averages nothing out of their difference
  const left = paired ? oneRounding(d) : roundingLeft(observed ? found.s : repeatabilityGrams, d);
  // an observed scatter holds what averages out of the roundings; a stated one does not
  const averaged = observed ? 0 : factor * Math.sqrt(Math.max(0, oneRounding(d) ** 2 - left ** 2));
  const loadRoundingU = Math.min(oneRounding(d), Math.hypot(left, averaged));
  return {
    scatter:
      apart > scatterU
        ? { name, u: apart, dof: Number.POSITIVE_INFINITY }
        : { name, u: scatterU, dof: own ? dof : birge ? birgeDof : repeatabilityDof },
    zeroRoundingU: once ? oneRounding(d) : loadRoundingU,
    loadRoundingU,
  };
}
