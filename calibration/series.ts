import { lastPlace } from "./decimal.ts";
import { gramsPerUnit, type MassUnit, toGrams } from "./units.ts";

/** Readings of one load, as the display wrote them. */
export interface PlainSeries {
  /** decimal texts in `unit` */
  readings: readonly string[];
  unit: MassUnit;
  /** the display with the load away, before and after, same unit; a tared balance that was not looked at again has none */
  /** standard uncertainty of what each reading might still have drifted, g; the same for all of them */
  driftUGrams?: number;
  zeroBefore?: string;
  zeroAfter?: string;
  /** zeroed before each reading, or once for all of them; each when absent */
  zeroed?: Zeroed;
}

/** A balance zeroed once keeps one rounding of its zero in all readings; zeroed before each, they average out. */
export const zeroings = ["each", "once"] as const;
export type Zeroed = (typeof zeroings)[number];

/** One look at the display at a time of its own: with the load away, or with the load. */
export type TimedReading = { atSeconds: number } & ({ zero: string } | { reading: string });

/**
 * What happens to the zero when the piece is lifted out. "kept": nothing (hung from the balance). "wet": the piece takes
 * a film of liquid along and brings it back, so zeros after the first reading are low by the film. "dried": the film
 * is wiped off and stays lost, so each zero begins a run of its own.
 */
export const lifts = ["kept", "wet", "dried"] as const;
export type Lifted = (typeof lifts)[number];

/** Zeros and readings in time, for a drift fit: evaporation from a vessel on the pan, a warming balance. */
export interface TimedSeries {
  timed: readonly TimedReading[];
  lifted: Lifted;
  unit: MassUnit;
  driftUGrams?: number;
}

export type Series = PlainSeries | TimedSeries;

/** The texts of a series in the order they were read, zeros left out. */
export function readingTexts(series: Series): readonly string[] {
  if ("readings" in series) return series.readings;
  return series.timed.flatMap((timed) => ("reading" in timed ? [timed.reading] : []));
}

/** The coarsest last place that readings of a series show, g. */
export function coarsestPlaceGrams(series: Series): number {
  return Math.max(...readingTexts(series).map((text) => lastPlace(text))) * Number(gramsPerUnit[series.unit]);
}

/** A text in the series' unit as grams, exact to the last place of the display. */
export function gramsOf(text: string, unit: MassUnit): number {
  return Number(toGrams(text, unit));
}
