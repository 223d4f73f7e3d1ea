/** Interval of permissible values; a missing side is unlimited. */
export interface ToleranceInterval {
  low?: number;
  high?: number;
}

/** Interval of permissible measured values, or the statement that none is left. */
export type AcceptanceInterval = ToleranceInterval | "empty";

/** Reads one side, unlimited when absent. */
export const lowOf = (t: ToleranceInterval) => t.low ?? Number.NEGATIVE_INFINITY;
export const highOf = (t: ToleranceInterval) => t.high ?? Number.POSITIVE_INFINITY;
