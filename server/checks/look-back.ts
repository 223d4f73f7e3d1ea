/** A check and a record as looking back needs them; `at` is ISO 8601. */
export interface DatedCheck {
  at: string;
  passed: boolean;
}

export interface DatedRecord {
  id: string;
  at: string;
}

export interface LookBack<R extends DatedRecord> {
  /** the last good check before the failed one; undefined when there never was one */
  since?: string;
  until: string;
  records: R[];
  says: string;
}

/**
 * What was measured between the last good check and a failed one: flagged, never deleted (non-conforming work,
 * ISO/IEC 17025:2017 7.10 [clause from memory]). Checks and records in any order.
 */
export function lookBack<R extends DatedRecord>(
  failedAt: string,
  checks: readonly DatedCheck[],
  records: readonly R[],
): LookBack<R> {
  const since = checks
    .filter(({ at, passed }) => passed && at < failedAt)
    .map(({ at }) => at)
    .sort()
    .at(-1);
  const doubtful = records
    .filter(({ at }) => at <= failedAt && (since === undefined || at > since))
    .sort((a, b) => a.at.localeCompare(b.at));
  const from =
    since === undefined ? "ever, since no good check is on record" : `since the last good check, ${since}`;
  return {
    ...(since === undefined ? {} : { since }),
    until: failedAt,
    records: doubtful,
    says:
      doubtful.length === 0
        ? `Nothing was measured ${from}.`
        : `${doubtful.length} ${doubtful.length === 1 ? "record" : "records"} measured ${from}: look back at each before it is relied on.`,
  };
}
