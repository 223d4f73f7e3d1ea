import { type Message, message } from "../../../calibration/message.ts";
import { decimalsOf, density, mass } from "../amounts.ts";
import { type ChartPoint, type ControlChart, chartUnits, type Epoch, epochAt } from "./control-chart.ts";
import { pointsForLimits } from "./epoch.ts";
import { brokenBy, type RunRule } from "./run-rules.ts";

export type PointState = "no-limits" | "in-control" | "warning" | "action";

/** A point ready to be drawn. */
export interface PlottedPoint extends ChartPoint {
  state: PointState;
  /** distance from the mean in units of s, where limits exist */
  z?: number;
  /** 1 for the first attempt of its session */
  attempt: number;
  /** such as "passed at the 3rd attempt" */
  message: Message;
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
  message: Message;
}

export interface Violation {
  rule: RunRule["name"];
  calls: RunRule["calls"];
  at: string;
  message: Message;
}

/** A control chart as a page draws it and reads it out. */
export interface ChartView {
  title: Message;
  unit: "g" | "g/cm³";
  points: PlottedPoint[];
  limits: LimitBand[];
  violations: Violation[];
  /** how the bench stands after the last point */
  standing: { state: PointState; message: Message; todo: Message };
}

const states = { warning: "warning", action: "action" } as const;

/** Works out a chart: each point judged by the limits in force at its time, run rules within one epoch only. Pure. */
export function chartView(chart: ControlChart): ChartView {
  const violations: Violation[] = [];
  const runs = new Map<Epoch, number[]>();
  const attempts = new Map<string, number>();
  const points = chart.points.map((point): PlottedPoint => {
    const attempt = (attempts.get(point.session) ?? 0) + 1;
    attempts.set(point.session, attempt);
    const epoch = epochAt(chart, point.at);
    if (epoch === undefined)
      return { ...point, attempt, state: "no-limits", message: message("bench-check.chart.before-limits") };
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
    for (const { name, calls, points: towards } of broken)
      violations.push({
        rule: name,
        calls,
        at: point.at,
        message: message("bench-check.chart.violation", {
          rule: message(`bench-check.rule.${name}`),
          cause: message(`bench-check.cause.${towards}`),
        }),
      });
    const worst = broken[0];
    return {
      ...point,
      attempt,
      z,
      state: worst === undefined ? "in-control" : states[worst.calls],
      message:
        worst === undefined
          ? message("bench-check.chart.in-control", { attempt })
          : message(`bench-check.rule.${worst.name}`),
    };
  });
  const limits = chart.epochs.map((epoch, place) => limitBand(chart, epoch, chart.epochs[place + 1]?.from));
  return {
    title: message(`bench-check.chart.titles.${chart.kind}`, { of: chart.ofTold ?? chart.of }),
    unit: chartUnits[chart.kind],
    points,
    limits,
    violations,
    standing: standing(points, violations, chart.epochs.length > 0),
  };
}

function limitBand(chart: ControlChart, epoch: Epoch, to: string | undefined): LimitBand {
  const { from, mean, s, n, provisional, signedBy, why } = epoch;
  const amount = (value: number) =>
    chartUnits[chart.kind] === "g" ? mass(value) : density(value, s > 0 ? decimalsOf(s) : 4);
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
    message: message("bench-check.limits.stand", {
      mean: amount(mean),
      s: amount(s),
      count: n,
      by: signedBy,
      why,
      kind: provisional ? "provisional" : "settled",
      settled: pointsForLimits.settled,
    }),
  };
}

/** How the bench stands. A check that passes only after failed attempts, no cause noted, stays a warning. */
function standing(
  points: readonly PlottedPoint[],
  violations: readonly Violation[],
  signed: boolean,
): ChartView["standing"] {
  const last = points.at(-1);
  if (last === undefined || last.state === "no-limits") {
    const lacking = Math.max(0, pointsForLimits.provisional - points.length);
    if (signed)
      return {
        state: "no-limits",
        message: message("bench-check.chart.nothing-yet"),
        todo: message("bench-check.chart.go-on"),
      };
    return {
      state: "no-limits",
      message: message("bench-check.chart.no-limits", { count: points.length }),
      todo:
        lacking === 0
          ? message("bench-check.chart.sign-first")
          : message("bench-check.chart.more-points", { count: lacking }),
    };
  }
  const { attempt } = last;
  const why = violations.find(({ at }) => at === last.at)?.message ?? last.message;
  if (last.state === "action")
    return {
      state: "action",
      message: message("bench-check.chart.action", { attempt, why }),
      todo: message("bench-check.chart.stop"),
    };
  const failed = points.filter(({ session, state }) => session === last.session && state === "action");
  const unexplained = failed.some(({ cause }) => cause === undefined) && last.cause === undefined;
  if (last.state === "warning" || unexplained)
    return {
      state: "warning",
      message:
        last.state === "warning"
          ? message("bench-check.chart.warning", { why })
          : message("bench-check.chart.unexplained", { attempt }),
      todo: message("bench-check.chart.ask-cause"),
    };
  return {
    state: "in-control",
    message: message("bench-check.chart.stands", { attempt }),
    todo: message("bench-check.chart.nothing-to-do"),
  };
}
