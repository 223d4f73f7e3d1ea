import { type RawBuilder, sql } from "kysely";
import { keyed } from "../../calibration/keyed.ts";
import { type State, states } from "../conformity/state.ts";
import type { Entry } from "./entry.ts";
import { entryOf } from "./rows.ts";
import type { EntryRow, Store } from "./tables.ts";

/** A stretch of time, ISO 8601: from ≤ at ≤ until. */
export interface Range {
  from: string;
  until: string;
}

/** What finished measurements are counted by. */
export const groupings = ["operator", "claim", "customer", "lot"] as const;
export type Grouping = (typeof groupings)[number];

/** Finished measurements that have something in common; what is void is counted apart and nowhere else. */
export interface Counted {
  records: number;
  states: Record<State, number>;
  voided: number;
  mass_g: number;
  /** mean of U/ρ; null where none has an interval */
  relativeExpanded: number | null;
}

export interface CountedGroup extends Counted {
  /** null: nothing was stated */
  key: string | null;
}

/** Measurements of one state in one group, as the database counts them. */
interface Row {
  key: string | null;
  state: State | null;
  voided: number;
  records: number | string;
  mass_g: number;
  /** sum of U/ρ, and over how many */
  relative: number | null;
  relatives: number | string;
}

/** Everything measured in a range, as one. */
export async function countedIn(store: Store, range: Range): Promise<Counted> {
  return counted(await rowsIn(store, range, sql`null`));
}

/** What was measured in a range by one thing, the largest group first. */
export async function countedBy(store: Store, range: Range, grouping: Grouping): Promise<CountedGroup[]> {
  const byKey = new Map<string | null, Row[]>();
  for (const row of await rowsIn(store, range, sql.ref(`records.${grouping}`)))
    byKey.set(row.key, [...(byKey.get(row.key) ?? []), row]);
  return [...byKey].map(([key, rows]) => ({ key, ...counted(rows) })).sort((a, b) => b.records - a.records);
}

async function rowsIn({ db }: Store, { from, until }: Range, key: RawBuilder<unknown>): Promise<Row[]> {
  const relative = sql`case when density_g_cm3 > 0 then expanded_g_cm3 / density_g_cm3 end`;
  const { rows } = await sql<Row>`
    select ${key} as key, state, voided, count(*) as records, sum(mass_g) as mass_g,
      sum(${relative}) as relative, count(${relative}) as relatives
    from records where at >= ${from} and at <= ${until} group by 1, 2, 3`.execute(db);
  return rows;
}

function counted(rows: readonly Row[]): Counted {
  const sum = (some: readonly Row[]) => some.reduce((total, { records }) => total + Number(records), 0);
  const standing = rows.filter(({ voided }) => !voided);
  const relatives = standing.reduce((total, row) => total + Number(row.relatives), 0);
  return {
    records: sum(standing),
    states: keyed(states, (state) => sum(standing.filter((row) => row.state === state))),
    voided: sum(rows) - sum(standing),
    mass_g: standing.reduce((total, { mass_g }) => total + mass_g, 0),
    relativeExpanded:
      relatives === 0 ? null : standing.reduce((total, row) => total + (row.relative ?? 0), 0) / relatives,
  };
}

/** Readings, and what was excluded of them, of the newest measurements of a range that stand, oldest first. */
export async function readingsWithin(
  { db }: Store,
  { from, until }: Range,
  mostRecords: number,
): Promise<Entry[]> {
  const { rows } = await sql<EntryRow>`
    select entries.* from (
        select subject from records where at >= ${from} and at <= ${until} and voided = 0
        order by at desc limit ${mostRecords}) as newest
      cross join entries
    where entries.subject = newest.subject and entries.kind in ('capture', 'voiding')
    order by entries.seq`.execute(db);
  return rows.map(entryOf);
}
