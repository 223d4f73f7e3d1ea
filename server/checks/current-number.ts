import type { Message } from "../../calibration/message.ts";
import type { CheckKind, CheckResult, Dof } from "./check.ts";
import type { RepeatabilityFound } from "./repeatability.ts";

/** Where a number of the profile comes from: a check with its date, or an assumption that says so. */
export type Origin =
  | { check: CheckKind; at: string; by: string; says: Message | string; passed: boolean }
  | { assumed: Assumed };

/** What stands where nothing was checked: worked out from the readability, from the dry repeatability, or nothing. */
export type Assumed = "from-readability" | "from-dry" | "none";

export interface ProfileNumber {
  value: number;
  dof: Dof;
  origin: Origin;
}

/** The passed checks of a kind, and the failed ones since the last of them. Results oldest first. */
function made<Found>(results: readonly CheckResult[], kind: CheckKind) {
  const all = results.filter((result) => result.kind === kind) as CheckResult<Found>[];
  const failedSince = all.slice(all.findLastIndex(({ passed }) => passed) + 1);
  return { passed: all.filter(({ passed }) => passed), failedSince };
}

const worst = (known: ProfileNumber, failed: readonly ProfileNumber[]) =>
  failed.reduce((a, b) => (b.value > a.value ? b : a), known);

/** The scatter that repeatability tests give: the passed ones pooled, or a failed one since that found more. */
export function currentScatter(
  results: readonly CheckResult[],
  kind: CheckKind,
  unknown: ProfileNumber,
): ProfileNumber {
  const { passed, failedSince } = made<RepeatabilityFound>(results, kind);
  const last = passed.at(-1);
  const known = last ? { ...pooled(passed), origin: originOf(last) } : unknown;
  const failed = failedSince.map((one) => ({ ...pooled([one]), origin: originOf(one) }));
  return worst(known, failed);
}

/** A number of a single check: of the newest passed one, or of a failed one since that found a worse (larger) value. */
export function currentNumber<Found>(
  results: readonly CheckResult[],
  kind: CheckKind,
  unknown: ProfileNumber,
  valueIn: (found: Found) => number,
): ProfileNumber {
  const { passed, failedSince } = made<Found>(results, kind);
  const number = (one: CheckResult<Found>) => ({
    value: valueIn(one.found),
    dof: null,
    origin: originOf(one),
  });
  const last = passed.at(-1);
  return worst(last ? number(last) : unknown, failedSince.map(number));
}

/** Where a number of a check comes from. */
export const originOf = ({ kind, at, by, says: message, passed }: CheckResult): Origin => ({
  check: kind,
  at,
  by,
  says: message,
  passed,
});

/** Pooled standard deviation √(Σν s²/Σν), never below what the display hides, with the sum of the dof. */
function pooled(results: readonly CheckResult<RepeatabilityFound>[]): { value: number; dof: number } {
  const dof = results.reduce((sum, { found }) => sum + found.dof, 0);
  const variance =
    results.reduce((sum, { found }) => sum + found.dof * found.repeatabilityGrams ** 2, 0) / dof;
  return { value: Math.sqrt(variance), dof };
}
