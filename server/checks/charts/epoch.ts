import { mean } from "../../../calibration/mean.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { sampleDeviation, scatterPerReadability } from "../check.ts";
import type { ChartPoint, ControlChart, Epoch } from "./control-chart.ts";

/** Common practice: provisional limits from 7 points, better 12; limits to keep from 25. */
export const pointsForLimits = { provisional: 7, settled: 25 };

/**
 * The chart with new limits, from `from` on. Limits never follow the data by themselves: somebody signs, and says why
 * (first limits, new water, balance moved, new hanger). Old epochs and their points stay as they were.
 * `basis` are the points the limits rest on; s is never below what their display hides, 0.41 of its last place, so that
 * equal points make no limits of no width. Throws Refusal without signature or reason, below seven points, or
 * when it would begin before the epoch it follows.
 */
export function withEpoch(
  chart: ControlChart,
  signed: { from: string; by: string; why: string; basis: readonly ChartPoint[] },
): ControlChart {
  const { from, by, why, basis } = signed;
  if (by.trim() === "" || why.trim() === "")
    throw new Refusal("bench-check.limits.unsigned", {}, by.trim() === "" ? "by" : "why");
  if (basis.length < pointsForLimits.provisional)
    throw new Refusal("bench-check.limits.too-few", {
      count: basis.length,
      least: pointsForLimits.provisional,
    });
  const before = chart.epochs.at(-1);
  if (before !== undefined && from <= before.from)
    throw new Refusal("bench-check.limits.backwards", { from, before: before.from });
  const epoch: Epoch = {
    from,
    mean: mean(basis.map(({ value }) => value)),
    s: scatterOf(basis),
    n: basis.length,
    provisional: basis.length < pointsForLimits.settled,
    signedBy: by.trim(),
    why: why.trim(),
  };
  return { ...chart, epochs: [...chart.epochs, epoch] };
}

function scatterOf(points: readonly ChartPoint[]): number {
  const resolution = Math.max(...points.map((point) => point.resolution ?? 0));
  return Math.max(sampleDeviation(points.map(({ value }) => value)), scatterPerReadability * resolution);
}

/**
 * The house's own scatter on a chart, with its degrees of freedom: that of the limits in force, or of the points while
 * nobody has signed limits. Throws Refusal while there are too few.
 */
export function ownScatter(chart: ControlChart): { s: number; dof: number } {
  const signed = chart.epochs.at(-1);
  if (signed) return { s: signed.s, dof: signed.n - 1 };
  const basis = basisOf(chart);
  if (basis.length < pointsForLimits.provisional)
    throw new Refusal("bench-check.trainee.own-unknown", {
      piece: chart.of,
      count: basis.length,
      least: pointsForLimits.provisional,
    });
  return { s: scatterOf(basis), dof: basis.length - 1 };
}

/** The points new limits rest on: those since the last limits that fit, since limits describe a bench in order. */
export function basisOf({ points, epochs }: ControlChart): ChartPoint[] {
  const since = epochs.at(-1)?.from ?? "";
  return points.filter(({ at, fits = true }) => at > since && fits);
}
