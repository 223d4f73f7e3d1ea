import { chiSquareAbove } from "./chi-square.ts";
import { probabilityOfRatio } from "./f-ratio.ts";
import { normalBelow, normalQuantile } from "./normal.ts";
import { repeats } from "./repeats.ts";
import { incompleteBeta } from "./student.ts";

/**
 * Probabilities below which readings of one load are taken to disagree: `told` widens and is told, `stops` leaves no
 * measurement. This program's choice: one sound set in fifty, in a thousand.
 */
export const levels = { warns: 0.02, stops: 0.001 } as const;

/** The same for a run one way, which is tested beside the scatter. */
const trendLevels = { warns: 0.01, stops: 0.0003 } as const;
/** Readings too alike: neighbours, or all of them, for which so many are needed. */
const alike = { warns: 0.01, count: 4 } as const;

/** agree: nothing against them; differ: told, and the mean is widened; contradict: no mean of one load */
export type Verdict = "agree" | "differ" | "contradict";

/** What one reading of a load should scatter, g. */
export interface Expected {
  /** standard deviation of one reading with its roundings */
  scatterGrams: number;
  /** degrees of freedom it was found with; Infinity when taken as known */
  dof: number;
  /** the display is fine enough to show so little scatter as would be too little */
  fine?: boolean;
}

/** How readings of one load agree with one another and with what was stated. All in g. */
export interface Agreement {
  verdict: Verdict;
  count: number;
  /** standard deviation found, n − 1 */
  s: number;
  span: number;
  /** (n − 1)·s²/σ² */
  chiSquare: number;
  /** probability of so much scatter or more, were the stated one true: χ², or F where it is known with few dof */
  scatter: { verdict: Verdict; p: number };
  /** slope along the order taken; `seenGrams`: slope a reading that is told in 95 of 100 cases */
  trend: { verdict: Verdict; p: number; gramsPerReading: number; seenGrams: number };
  /** correlation of neighbours, and the probability of neighbours so alike by chance */
  serial: { verdict: Verdict; p: number; correlation: number };
  /** probability of so little scatter or less; it widens nothing and is no part of `verdict` */
  tooLittle: { verdict: Verdict; p: number };
  /** place of the reading furthest from the middle one, the later of two */
  standsOut: number;
}

const worst = (all: readonly Verdict[]): Verdict =>
  all.includes("contradict") ? "contradict" : all.includes("differ") ? "differ" : "agree";

const judged = (p: number, { warns, stops }: { warns: number; stops: number }): Verdict =>
  p < stops ? "contradict" : p < warns ? "differ" : "agree";

/**
 * Tests readings of one load in the order taken. Scatter from two readings on: χ² = (n − 1)s²/σ² (NIST/SEMATECH
 * e-Handbook 1.3.5.8), or F = s²/σ² where σ was found with few degrees of freedom (1.3.5.9). From three on the slope of
 * the least-squares line against σ (two-sided), and the ratio of the mean square successive difference to the variance
 * (von Neumann 1941, here by the beta law with its first two moments [from memory]; of three readings only the slope).
 * Readings that hang together scatter less than single ones, so from four on too little scatter is told as well, where
 * the display is fine enough to show it. Power where nothing but a draught of first order, 0.95 a reading, moves them by
 * the stated scatter: of 6 readings 70 %, of 10 90 %; of three times as much 20 and 50 %. To widen every mean by the
 * correlation it shows would cover one in ten more of such sets of 6, and 97.3 % of the sound ones for 95.45. A draught beside
 * as much white noise shows in one of seven sets of six: the mean of such readings is known no better than one of them.
 */
export function agreement(readings: readonly number[], expected: Expected): Agreement {
  const { s, n } = repeats(readings);
  const span = n === 0 ? 0 : Math.max(...readings) - Math.min(...readings);
  const ratio = expected.scatterGrams > 0 ? (s / expected.scatterGrams) ** 2 : 0;
  const scatterP =
    n < 2 || ratio === 0
      ? 1
      : Number.isFinite(expected.dof)
        ? probabilityOfRatio(ratio, n - 1, expected.dof)
        : chiSquareAbove((n - 1) * ratio, n - 1);
  const scatter = { verdict: judged(scatterP, levels), p: scatterP };
  const trend = trendOf(readings, expected);
  const serial = serialOf(readings, s);
  const littleP = expected.fine && n >= alike.count ? 1 - scatterP : 1;
  return {
    verdict: worst([scatter.verdict, trend.verdict, serial.verdict]),
    count: n,
    s,
    span,
    chiSquare: (n - 1) * ratio,
    scatter,
    trend,
    serial,
    tooLittle: { verdict: littleP < alike.warns ? "differ" : "agree", p: littleP },
    standsOut: furthest(readings),
  };
}

function trendOf(readings: readonly number[], { scatterGrams, dof }: Expected): Agreement["trend"] {
  const n = readings.length;
  if (n < 3 || !(scatterGrams > 0)) return { verdict: "agree", p: 1, gramsPerReading: 0, seenGrams: 0 };
  const middle = (n - 1) / 2;
  const squares = (n * (n * n - 1)) / 12;
  const slope = readings.reduce((sum, grams, place) => sum + (place - middle) * grams, 0) / squares;
  const u = scatterGrams / Math.sqrt(squares);
  // the square of the slope over its variance is χ² or F with one degree of freedom
  const ratio = (slope / u) ** 2;
  const p = Number.isFinite(dof) ? probabilityOfRatio(ratio, 1, dof) : 2 * normalBelow(-Math.abs(slope / u));
  return {
    verdict: judged(p, trendLevels),
    p,
    gramsPerReading: slope,
    seenGrams: (normalQuantile(1 - trendLevels.warns / 2) + normalQuantile(0.95)) * u,
  };
}

function serialOf(readings: readonly number[], s: number): Agreement["serial"] {
  const n = readings.length;
  if (n < alike.count || s === 0) return { verdict: "agree", p: 1, correlation: 0 };
  const steps = readings.slice(1).reduce((sum, grams, place) => sum + (grams - readings[place]!) ** 2, 0);
  const quarter = steps / ((n - 1) * s * s) / 4;
  const shape = ((n * n - 1) / (n - 2) - 1) / 2;
  const p = incompleteBeta(Math.min(1, quarter), shape, shape);
  return { verdict: p < alike.warns ? "differ" : "agree", p, correlation: 1 - 2 * quarter };
}

function furthest(readings: readonly number[]): number {
  const sorted = readings.toSorted((a, b) => a - b);
  const middle = (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2;
  const away = readings.map((grams) => Math.abs(grams - middle));
  const most = Math.max(...away);
  return away.findLastIndex((one) => one >= most * (1 - 1e-9));
}
