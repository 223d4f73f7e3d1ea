import type { ChartKind, Epoch } from "../checks/charts/control-chart.ts";
import type { CheckResult } from "../checks/check.ts";

/** A check as the ledger keeps it: the result, what was asked, and its place. */
export type StoredCheck = CheckResult & { id: string; asked?: unknown };

/** Limits of a chart as the ledger keeps them. */
export interface StoredLimits extends Epoch {
  chart: ChartKind;
  of: string;
}
