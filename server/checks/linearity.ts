import { mean } from "../../calibration/mean.ts";
import { message } from "../../calibration/message.ts";
import { mass, massBesideLimit } from "./amounts.ts";
import {
  atLeast,
  type CheckedBy,
  type CheckResult,
  scatterPerReadability,
  shownGrams,
  spanUOf,
} from "./check.ts";
import { type CheckWeight, conventional } from "./check-weights.ts";

/** Common practice: the departure from a straight line stays within three last places. */
const mostPerReadability = 3;

export interface LinearityTest {
  /** each load once or more, the balance zeroed before each; readings in g as shown */
  loads: readonly { weights: readonly CheckWeight[]; readings: readonly string[] }[];
  readabilityGrams: number;
  repeatabilityGrams: number;
  /** largest departure from the straight line to pass, g */
  mostGrams?: number;
}

export interface LinearityFound {
  points: { loadGrams: number; errorGrams: number; departureGrams: number; uGrams: number }[];
  /** slope of the errors: a span error, which cancels in a density and stays in a mass; relative */
  spanError: number;
  /** standard uncertainty of the scale, relative; see spanUOf */
  spanU: number;
  largestDepartureGrams: number;
  /** half-width for budgets: departure and the test's own uncertainty together, as a rectangular law */
  linearityGrams: number;
}

/**
 * Errors of indication against check weights, parted into a straight line through zero (span: cancels in the ratio of
 * a density) and the departures from it (linearity: does not). The line is fitted by least squares. Throws Refusal
 * below three loads. The half-width a is chosen so that a²/3 = (largest departure)²/3 + u², u of the test at that load.
 */
export function linearity(test: LinearityTest, checked: CheckedBy): CheckResult<LinearityFound> {
  const { loads, readabilityGrams, repeatabilityGrams } = test;
  atLeast(3, loads);
  const measured = loads.map(({ weights, readings }) => {
    atLeast(1, readings);
    const values = weights.map(conventional);
    const loadGrams = values.reduce((sum, { grams }) => sum + grams, 0);
    return {
      loadGrams,
      errorGrams: mean(readings.map(shownGrams)) - loadGrams,
      uGrams: Math.hypot(
        values.reduce((sum, { uGrams }) => sum + uGrams, 0), // weights of one set err together
        repeatabilityGrams / Math.sqrt(readings.length),
        scatterPerReadability * readabilityGrams,
      ),
    };
  });
  const squares = measured.reduce((sum, { loadGrams }) => sum + loadGrams ** 2, 0);
  const slopeOf = (of: (point: (typeof measured)[number]) => number) =>
    measured.reduce((sum, point) => sum + point.loadGrams * of(point), 0) / squares;
  const spanError = slopeOf(({ errorGrams }) => errorGrams);
  const points = measured.map((point) => ({
    ...point,
    departureGrams: point.errorGrams - spanError * point.loadGrams,
  }));
  const worst = points.reduce((a, b) => (Math.abs(b.departureGrams) > Math.abs(a.departureGrams) ? b : a));
  const largestDepartureGrams = Math.abs(worst.departureGrams);
  const most = test.mostGrams ?? mostPerReadability * readabilityGrams;
  const passed = largestDepartureGrams <= most;
  const coarse = points.find(({ uGrams }) => uGrams > most);
  const { found, limit } = massBesideLimit(largestDepartureGrams, most);
  return {
    ...checked,
    kind: "linearity",
    passed,
    says: message("bench-check.linearity.found", {
      departure: found,
      load: mass(worst.loadGrams),
      passed: String(passed),
      limit,
      side: spanError < 0 ? "low" : "high",
      span_percent: Math.abs(spanError) * 100,
      weights: coarse === undefined ? "fine" : "coarse",
      at: mass((coarse ?? worst).loadGrams),
    }),
    todo: message(
      !passed
        ? "bench-check.linearity.failed"
        : coarse === undefined
          ? "bench-check.linearity.passed"
          : "bench-check.linearity.coarse",
    ),
    found: {
      points,
      spanError,
      // at its most: the weights of one set err together
      spanU: spanUOf(
        spanError,
        slopeOf(({ uGrams }) => uGrams),
      ),
      largestDepartureGrams,
      linearityGrams: Math.sqrt(3 * Math.hypot(largestDepartureGrams / Math.sqrt(3), worst.uGrams) ** 2),
    },
  };
}
