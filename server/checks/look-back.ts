/** A check and a record as looking back needs them; `at` is ISO 8601. */
export interface DatedCheck {
  at: string;
  passed: boolean;
}

/** When the last good one of these checks was made; undefined when there never was one. Checks in any order. */
export function lastGood(checks: readonly DatedCheck[]): string | undefined {
  return checks
    .filter(({ passed }) => passed)
    .map(({ at }) => at)
    .sort()
    .at(-1);
}

/**
 * What was measured since the last good check, before and after the failures that follow it: flagged, never deleted
 * (non-conforming work, ISO/IEC 17025:2017 7.10 [clause from memory]). Without any good check everything is doubtful.
 */
export function toLookAt<R extends { at: string }>(since: string | undefined, records: readonly R[]): R[] {
  return records.filter(({ at }) => since === undefined || at > since);
}
