import type { KeptCheck, KeptChecks } from "../bench/kept-checks.ts";
import type { ChartKind, ChartPoint, ControlChart } from "../checks/charts/control-chart.ts";

/** The charts that the checks of a ledger make: every attempt is a point, also the failed ones. */
export function chartsOf({ all, limits }: Pick<KeptChecks, "all" | "limits">): ControlChart[] {
  const charts = new Map<string, ControlChart & { points: ChartPoint[] }>();
  let session = "";
  const last = new Map<string, KeptCheck>();
  for (const check of all) {
    const plotted = pointOf(check);
    if (plotted === undefined) continue;
    const { kind, of, value } = plotted;
    const id = `${kind} ${of}`;
    const before = last.get(id);
    // A further attempt of the same occasion: the same day, and the one before had failed.
    const again = before && !before.passed && before.at.slice(0, 10) === check.at.slice(0, 10);
    session = again ? (charts.get(id)?.points.at(-1)?.session ?? check.id) : check.id;
    last.set(id, check);
    const chart = charts.get(id) ?? {
      kind,
      of,
      epochs: limits.filter((one) => one.chart === kind && one.of === of),
      points: [],
    };
    const { note } = check as { note?: string };
    chart.points.push({
      at: check.at,
      value,
      by: check.by,
      session,
      ...(note === undefined ? {} : { cause: note }),
    });
    charts.set(id, chart);
  }
  return [...charts.values()];
}

/** Value and chart of a check; undefined for one that has no chart. */
function pointOf(check: KeptCheck): { kind: ChartKind; of: string; value: number } | undefined {
  if (check.kind === "check-weight") {
    const { weight } = check.asked as { weight: { nominalGrams: number } };
    const { errorGrams } = check.found as { errorGrams: number };
    return { kind: "check-weight", of: `${weight.nominalGrams} g on ${check.of}`, value: errorGrams };
  }
  if (check.kind === "reference-piece") {
    const { piece, measured } = check.asked as { piece: string; measured: { gPerCm3: number } };
    return { kind: "reference-density", of: piece, value: measured.gPerCm3 };
  }
  return undefined;
}
