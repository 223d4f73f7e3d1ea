import { type Message, message } from "../../calibration/message.ts";
import { chartView } from "./charts/chart-view.ts";
import type { ChartKind, ControlChart } from "./charts/control-chart.ts";
import type { CheckKind, CheckResult } from "./check.ts";

/** Why the bench is closed: what failed, since when, and what to do first. Weighing goes on; its records carry this. */
export interface BenchClosed {
  /** ISO 8601, of the first failure that stands */
  since: string;
  says: Message | string;
  todo: Message | string;
  /** the checks it comes from */
  kinds: readonly CheckKind[];
}

type Reason = Pick<BenchClosed, "says" | "todo"> & { kind: CheckKind; at: string };

const reasonOf = ({ kind, at, says: sentence, todo }: CheckResult): Reason => ({
  kind,
  at,
  says: sentence,
  todo,
});

/** The check that a chart is made of. */
const checkOfChart: Partial<Record<ChartKind, CheckKind>> = {
  "check-weight": "check-weight",
  "reference-density": "reference-piece",
};

/** False for a check of a person: it stops nobody else from weighing. */
export const closesBench = ({ kind }: Pick<CheckResult, "kind">) => kind !== "trainee";

/**
 * Whether the checks close the bench: the newest attempt of a kind failed, or a chart of its checks ends with a point
 * that calls for action. `checks` of one balance and its thermometer, oldest first; `charts` those of its checks (a
 * chart of pieces stops a piece, not the bench).
 */
export function benchClosed(
  checks: readonly CheckResult[],
  charts: readonly ControlChart[],
): BenchClosed | undefined {
  const newest = new Map(checks.map((check) => [check.kind, check]));
  const failed = [...newest.values()].filter((check) => !check.passed && closesBench(check));
  const out = charts.flatMap((chart): Reason[] => {
    const view = chartView(chart);
    const last = view.points.at(-1);
    // a failed check says it already
    const kind = checkOfChart[chart.kind];
    if (last === undefined || kind === undefined || last.fits === false || view.standing.state !== "action")
      return [];
    return [
      {
        kind,
        at: last.at,
        says: message("bench-check.chart.closes", { title: view.title, says: view.standing.message }),
        todo: view.standing.todo,
      },
    ];
  });
  const reasons = [...failed.map(reasonOf), ...out].sort((a, b) => a.at.localeCompare(b.at));
  const first = reasons[0];
  if (first === undefined) return undefined;
  return {
    since: first.at,
    says: reasons
      .map(({ says: sentence }) => sentence)
      .reduce((before, sentence) => message("bench-check.closed.and", { before, says: sentence })),
    todo: first.todo,
    kinds: reasons.map(({ kind }) => kind),
  };
}
