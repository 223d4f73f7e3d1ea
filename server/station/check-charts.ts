import { type Message, message } from "../../calibration/message.ts";
import { mass } from "../checks/amounts.ts";
import type { ChartKind, ChartPoint, ControlChart } from "../checks/charts/control-chart.ts";
import { balanceLabel } from "./balance-label.ts";
import type { StoredCheck, StoredLimits } from "./stored-check.ts";
import type { WeighingPoint } from "./weighing-points.ts";

type Charts = Map<string, ControlChart & { points: ChartPoint[] }>;

/** The charts that the checks of a ledger and its weighings make: every attempt is a point, also the failed ones. */
export function chartsOf(
  { all, limits }: { all: readonly StoredCheck[]; limits: readonly StoredLimits[] },
  weighed: readonly WeighingPoint[] = [],
): ControlChart[] {
  const charts: Charts = new Map();
  const chart = (kind: ChartKind, of: string, ofTold?: Message | string) => {
    const id = `${kind} ${of}`;
    const epochs = limits.filter((one) => one.chart === kind && one.of === of);
    const found = charts.get(id) ?? { kind, of, ...(ofTold && { ofTold }), epochs, points: [] };
    charts.set(id, found);
    return found;
  };
  const last = new Map<ControlChart, StoredCheck>();
  for (const check of all) {
    const plotted = pointOf(check);
    if (plotted === undefined) continue;
    const on = chart(plotted.kind, plotted.of, plotted.ofTold);
    // A further attempt of the same occasion: the same day, and the one before had failed.
    const before = last.get(on);
    const again = before && !before.passed && before.at.slice(0, 10) === check.at.slice(0, 10);
    last.set(on, check);
    const { note } = check as { note?: string };
    on.points.push({
      at: check.at,
      value: plotted.value,
      by: check.by,
      resolution: plotted.resolution,
      session: again ? (on.points.at(-1)?.session ?? check.id) : check.id,
      fits: check.passed,
      allowed: plotted.allowed,
      ...(note === undefined ? {} : { cause: note }),
    });
  }
  for (const { chart: kind, of, ofTold, excluded, ...point } of weighed)
    chart(kind, of, ofTold).points.push({ ...point, fits: !excluded });
  return [...charts.values()];
}

interface Plotted {
  kind: ChartKind;
  of: string;
  ofTold?: Message | string;
  value: number;
  resolution: number;
  allowed: readonly [number, number];
}

/** Value and chart of a check; undefined for one that has no chart. */
function pointOf(check: StoredCheck): Plotted | undefined {
  if (check.kind === "check-weight") {
    const { weight, readabilityGrams } = check.asked as {
      weight: { nominalGrams: number };
      readabilityGrams: number;
    };
    const { errorGrams, tolerableGrams: most } = check.found as {
      errorGrams: number;
      tolerableGrams: number;
    };
    const of = `${weight.nominalGrams} g on ${check.of}`;
    const ofTold = message("bench-check.chart.weight-on", {
      weight: mass(weight.nominalGrams),
      balance: balanceLabel(check.of),
    });
    const allowed = [-most, most] as const;
    return { kind: "check-weight", of, ofTold, value: errorGrams, resolution: readabilityGrams, allowed };
  }
  if (check.kind === "reference-piece") {
    const { piece, measured } = check.asked as {
      piece: string;
      measured: { gPerCm3: number; resolutionGPerCm3?: number };
    };
    const { gPerCm3, resolutionGPerCm3 = 0 } = measured;
    const { differenceGPerCm3, blindBelowGPerCm3: most } = check.found as {
      differenceGPerCm3: number;
      blindBelowGPerCm3: number;
    };
    const stated = gPerCm3 - differenceGPerCm3;
    return {
      ...{ kind: "reference-density", of: piece, value: gPerCm3, resolution: resolutionGPerCm3 },
      allowed: [stated - most, stated + most],
    };
  }
  return undefined;
}
