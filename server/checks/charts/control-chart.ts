import type { Message, Reason } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";

/** The four charts of a bench: two of its checks, two that every piece gives for nothing. */
export const chartKinds = ["check-weight", "reference-density", "zero-after-lift", "dry-after"] as const;
export type ChartKind = (typeof chartKinds)[number];

/** The unit of each chart's values. */
export const chartUnits: Record<ChartKind, "g" | "g/cm³"> = {
  "check-weight": "g",
  "reference-density": "g/cm³",
  "zero-after-lift": "g",
  "dry-after": "g",
};

/** One attempt. Every attempt is a point: those of one check share their session. */
export interface ChartPoint {
  /** ISO 8601 */
  at: string;
  value: number;
  by: string;
  session: string;
  /** what one last place of the display comes to, in the chart's unit; 0 or left out when not known */
  resolution?: number;
  /** false for a failed check or a reading set aside: it stays drawn, and limits do not rest on it */
  fits?: boolean;
  /** what the check itself allows, from and to, in the chart's unit */
  allowed?: readonly [number, number];
  /** cause found, if one was looked for */
  cause?: Reason;
}

/** Limits and the signature they rest on. They hold from `from` until the next epoch begins. */
export interface Epoch {
  from: string;
  mean: number;
  s: number;
  /** how many points the limits rest on */
  n: number;
  provisional: boolean;
  signedBy: string;
  why: string;
  /** number of its entry in the ledger, once it stands there */
  seq?: number;
}

/** Plain data for the ledger; points and epochs are only ever added. */
export interface ControlChart {
  kind: ChartKind;
  /** balance or reference piece the chart belongs to: names it in the ledger */
  of: string;
  /** the same as it is told, where that is more than a name */
  ofTold?: Message | string;
  epochs: readonly Epoch[];
  points: readonly ChartPoint[];
}

/** The epoch a moment falls in, or undefined before the first. */
export function epochAt(chart: ControlChart, at: string): Epoch | undefined {
  return chart.epochs.findLast(({ from }) => from <= at);
}

/** The chart with one more attempt. Throws Refusal when its value is no number or it is older than the last. */
export function withPoint(chart: ControlChart, point: ChartPoint): ControlChart {
  if (!Number.isFinite(point.value))
    throw new Refusal("bench-check.chart.no-number", {
      value: String(point.value),
      unit: chartUnits[chart.kind],
    });
  const last = chart.points.at(-1);
  if (last !== undefined && point.at < last.at)
    throw new Refusal("bench-check.chart.out-of-order", { at: point.at, before: last.at });
  return { ...chart, points: [...chart.points, point] };
}
