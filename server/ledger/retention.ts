import type { Entry } from "./entry.ts";

/** A setting of how long records are kept, from the moment it was written. */
export interface RetentionSetting {
  at: string;
  years: number;
  by?: string | undefined;
  reason?: string | undefined;
}

/** Longer than this is "for good". */
export const mostYears = 200;

/** The settings in the ledger, oldest first. */
export function retentionFrom(entries: readonly Entry[]): RetentionSetting[] {
  return entries.flatMap((entry) => (entry.kind === "retention" ? [{ ...entry.body, at: entry.at }] : []));
}

/**
 * How long a record is kept, in years: the longest of the setting in force when it was made and every one since. So
 * a setting can lengthen the time of records that exist, and never shorten it. Null: no setting, kept for good.
 */
export function yearsKept(recordAt: string, settings: readonly RetentionSetting[]): number | null {
  const made = Date.parse(recordAt);
  const before = settings.filter(({ at }) => Date.parse(at) <= made).at(-1);
  const since = settings.filter(({ at }) => Date.parse(at) > made);
  // Made before there was any setting: it was to be kept for good, and that cannot be shortened.
  if (!before) return null;
  return Math.max(before.years, ...since.map(({ years }) => years));
}

/** The last day a record must be kept, ISO 8601; null when it is kept for good. */
export function keptUntil(recordAt: string, settings: readonly RetentionSetting[]): string | null {
  const years = yearsKept(recordAt, settings);
  if (years === null) return null;
  const until = new Date(recordAt);
  const whole = Math.trunc(years);
  const month = until.getUTCMonth();
  until.setUTCFullYear(until.getUTCFullYear() + whole);
  // 29 February and four years that have none: the day after, never the day before
  if (until.getUTCMonth() !== month) until.setUTCDate(1);
  const rest = Math.ceil((years - whole) * 366);
  until.setUTCDate(until.getUTCDate() + rest);
  return until.toISOString();
}

/** Of these records, those whose time ends before `by`, soonest first. They are shown; nothing is ever deleted by itself. */
export function expiring<Item extends { at: string }>(
  records: readonly Item[],
  settings: readonly RetentionSetting[],
  by: Date,
): { record: Item; until: string }[] {
  return records
    .flatMap((record) => {
      const until = keptUntil(record.at, settings);
      return until !== null && Date.parse(until) < by.getTime() ? [{ record, until }] : [];
    })
    .sort((a, b) => Date.parse(a.until) - Date.parse(b.until));
}
