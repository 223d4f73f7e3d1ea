import { massWords, ordinal, shortest } from "../amounts.ts";
import { type ChartPoint, type ControlChart, chartWords, type Epoch, epochAt } from "./control-chart.ts";
import { pointsForLimits } from "./epoch.ts";
import { brokenBy, causes, type RunRule } from "./run-rules.ts";

export type PointState = "no-limits" | "in-control" | "warning" | "action";

/** A point ready to be drawn. */
export interface PlottedPoint extends ChartPoint {
  state: PointState;
  /** distance from the mean in units of s, where limits exist */
  z?: number;
  /** 1 for the first attempt of its session */
  attempt: number;
  /** "passed at the 3rd attempt", "2-2s: two in a row …" */
  says: string;
}

/** Limits ready to be drawn, from their beginning to the next epoch's (or open). */
export interface LimitBand {
  from: string;
  to?: string;
  /** place of its first point in `points`; their count when it has none yet */
  firstPoint: number;
  mean: number;
  s: number;
  warning: readonly [number, number];
  action: readonly [number, number];
  provisional: boolean;
  says: string;
}

export interface Violation {
  rule: RunRule["name"];
  calls: RunRule["calls"];
  at: string;
  says: string;
}

/** A control chart as a page draws it and reads it out. */
export interface ChartView {
  title: string;
  unit: string;
  points: PlottedPoint[];
  limits: LimitBand[];
  violations: Violation[];
  /** how the bench stands after the last point */
  standing: { state: PointState; says: string; todo: string };
}

const states = { warning: "warning", action: "action" } as const;

/** Works out a chart: each point judged by the limits in force at its time, run rules within one epoch only. Pure. */
export function chartView(chart: ControlChart): ChartView {
  const { title, unit } = chartWords[chart.kind];
  const violations: Violation[] = [];
  const runs = new Map<Epoch, number[]>();
  const attempts = new Map<string, number>();
  const points = chart.points.map((point): PlottedPoint => {
    const attempt = (attempts.get(point.session) ?? 0) + 1;
    attempts.set(point.session, attempt);
    const epoch = epochAt(chart, point.at);
    if (epoch === undefined)
      return { ...point, attempt, state: "no-limits", says: "taken before there were limits" };
    const run = runs.get(epoch) ?? [];
    runs.set(epoch, run);
    const z =
      epoch.s === 0
        ? point.value === epoch.mean
          ? 0
          : Number.POSITIVE_INFINITY
        : (point.value - epoch.mean) / epoch.s;
    run.push(z);
    const broken = brokenBy(run);
    for (const { name, calls, says, points: towards } of broken)
      violations.push({ rule: name, calls, at: point.at, says: `${name}: ${says}. ${causes[towards]}` });
    const worst = broken[0];
    return {
      ...point,
      attempt,
      z,
      state: worst === undefined ? "in-control" : states[worst.calls],
      says:
        worst === undefined
          ? attempt === 1
            ? "in control"
            : `passed at the ${ordinal(attempt)} attempt`
          : `${worst.name}: ${worst.says}`,
    };
  });
  const limits = chart.epochs.map((epoch, place) => limitBand(chart, epoch, chart.epochs[place + 1]?.from));
  return {
    title: `${title}, ${chart.of}`,
    unit,
    points,
    limits,
    violations,
    standing: standing(points, violations, chart.epochs.length > 0),
  };
}

function limitBand(chart: ControlChart, epoch: Epoch, to: string | undefined): LimitBand {
  const { from, mean, s, n, provisional, signedBy, why } = epoch;
  const inWords = (value: number, digits: number) =>
    chartWords[chart.kind].unit === "g" ? massWords(value) : `${shortest(value, digits)} g/cm³`;
  const first = chart.points.findIndex(({ at }) => at >= from);
  return {
    from,
    ...(to === undefined ? {} : { to }),
    firstPoint: first < 0 ? chart.points.length : first,
    mean,
    s,
    warning: [mean - 2 * s, mean + 2 * s],
    action: [mean - 3 * s, mean + 3 * s],
    provisional,
    says:
      `Mean ${inWords(mean, 5)}, s ${inWords(s, 2)} from ${n} points, signed by ${signedBy}: ${why}.` +
      (provisional ? ` Provisional until ${pointsForLimits.settled} points.` : ""),
  };
}

/** How the bench stands. A check that passes only after failed attempts, no cause noted, stays a warning. */
function standing(
  points: readonly PlottedPoint[],
  violations: readonly Violation[],
  signed: boolean,
): ChartView["standing"] {
  const last = points.at(-1);
  if (signed && (last === undefined || last.state === "no-limits"))
    return {
      state: "no-limits",
      says: "The limits are signed, and nothing was measured under them yet.",
      todo: "Go on checking.",
    };
  if (last === undefined || last.state === "no-limits") {
    const lacking = Math.max(0, pointsForLimits.provisional - points.length);
    return {
      state: "no-limits",
      says: `${points.length} ${points.length === 1 ? "point" : "points"} and no limits yet.`,
      todo:
        lacking === 0
          ? "Sign the first limits."
          : `Go on checking: ${lacking} more points make provisional limits.`,
    };
  }
  const because = violations.find(({ at }) => at === last.at)?.says ?? "";
  if (last.state === "action")
    return {
      state: "action",
      says: `Out of control at the ${ordinal(last.attempt)} attempt. ${because}`,
      todo: "Stop. Find the cause, note it, check again, and look back at what was measured since the last good check.",
    };
  const failed = points.filter(({ session, state }) => session === last.session && state === "action");
  const unexplained = failed.some(({ cause }) => cause === undefined) && last.cause === undefined;
  if (last.state === "warning" || unexplained)
    return {
      state: "warning",
      says:
        last.state === "warning"
          ? `Warning. ${because}`
          : `In control, but only ${last.says}, and no cause was noted.`,
      todo: "Ask for the cause and note it. Work may go on; a second warning in a row stops it.",
    };
  return { state: "in-control", says: `In control: ${last.says}.`, todo: "Nothing to do." };
}
