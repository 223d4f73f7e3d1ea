import { type RawBuilder, type SelectQueryBuilder, sql } from "kysely";
import type { State } from "../conformity/state.ts";
import type { CustomerNames } from "./customer-names.ts";
import { wordsOf } from "./search-words.ts";
import { placeAt } from "./shared/place.ts";
import type { RecordRow, Store, Tables } from "./tables.ts";

/** What a list of finished measurements is asked for. Everything left out means "all". */
export interface RecordQuery {
  /** words, each the beginning of a word in ticket, description, claim, lot, operator, customer or subject */
  search?: string;
  filters?: RecordFilters;
  /** `exact` counts all that match, however many */
  page?: { before?: number; size?: number; exact?: boolean };
}

export interface RecordFilters {
  ticket?: string;
  claim?: string;
  lot?: string;
  bench?: string;
  state?: State;
  /** ISO 8601, from ≤ at < until */
  from?: string;
  until?: string;
  /** what the balance showed dry, g, both ends included */
  dryFromG?: number;
  dryToG?: number;
  /** with a photo that stands, or without one */
  photo?: boolean;
  voided?: boolean;
}

export type MeasurementRecord = Omit<RecordRow, "search" | "voided"> & { voided: boolean };

export interface RecordPage {
  /** newest first */
  records: MeasurementRecord[];
  /** page.before of the following page; null on the last */
  next: number | null;
  /** how many match, counted up to `countedUpTo` unless all were asked for */
  count: number;
  countIsFloor: boolean;
}

/** Counting stops here: nobody reads "734 211 matches", and counting them would cost more than the page. */
const countedUpTo = 1000;
const largestPage = 500;

/** One page of the list, newest first. */
export async function recordsOf(
  store: Store,
  query: RecordQuery,
  names: CustomerNames | null = null,
): Promise<RecordPage> {
  const size = Math.min(Math.max(Math.trunc(query.page?.size ?? 50), 1), largestPage);
  const { rows, order } = await matching(store, query, names);
  const before = query.page?.before;
  const upTo = before === undefined ? rows : rows.where(order, "<", before);
  const page = await upTo
    .selectAll("records")
    .orderBy(order, "desc")
    .limit(size + 1)
    .execute();
  const counted = await store.db
    .selectFrom(
      rows
        .select("records.seq")
        .$if(!query.page?.exact, (some) => some.limit(countedUpTo + 1))
        .as("matches"),
    )
    .select((select) => select.fn.countAll<number>().as("count"))
    .executeTakeFirstOrThrow();
  const records = wholeMoments(page, size).map((row) => withName(shownRecord(row), names));
  const count = Number(counted.count);
  const most = query.page?.exact ? Number.POSITIVE_INFINITY : countedUpTo;
  return {
    records,
    next: page.length > size ? (records.at(-1)?.seq ?? null) : null,
    count: Math.min(count, most),
    countIsFloor: count > most,
  };
}

/** At most `size` of the rows, so that no two of one place are parted: of many benches two records may have the same. */
function wholeMoments(rows: readonly RecordRow[], size: number): readonly RecordRow[] {
  const beyond = rows[size]?.seq;
  const shown = rows.slice(0, size);
  return shown.at(-1)?.seq === beyond ? shown.filter(({ seq }) => seq !== beyond) : shown;
}

/** Of other lots since a moment (ISO 8601), newest first; none that is void. */
export async function recordsOfOtherLots(
  { db }: Store,
  lot: string,
  since: string,
  most: number,
): Promise<MeasurementRecord[]> {
  const rows = await db
    .selectFrom("records")
    .selectAll()
    .where("at", ">=", since)
    .where("lot", "is not", null)
    .where("lot", "<>", lot)
    .where("voided", "=", 0)
    .orderBy("seq", "desc")
    .limit(most)
    .execute();
  return rows.map(shownRecord);
}

/** With the name of who brought it; the reference of one that is gone. */
function withName(record: MeasurementRecord, names: CustomerNames | null): MeasurementRecord {
  const { customer } = record;
  return customer === null ? record : { ...record, customer: names?.shown(customer) ?? customer };
}

/** The row without what only the search needs. */
export function shownRecord({ search: _search, voided, ...row }: RecordRow): MeasurementRecord {
  return { ...row, voided: voided !== 0 };
}

/** A range of dry masses with no more rows than this is read whole by its index; what is asked beside it is looked up there. */
const fewRows = 5000;

async function matching(
  store: Store,
  { search = "", filters = {} }: RecordQuery,
  names: CustomerNames | null,
) {
  const few = await isNarrow(store, filters);
  const words = wordsOf(search);
  const brought = words.map((word) => names?.matching([word]) ?? []);
  const isByName = brought.some((of) => of.length > 0);
  // SQLite keeps no statistics here: a plus sign keeps it from an index that a wide range would make it sort.
  const at = (column: string, by: boolean) =>
    sql.raw<never>(by && store.dialect === "sqlite" ? `+records.${column}` : `records.${column}`);
  const { rows: all, order } = few || isByName ? spelled(store, words, brought) : found(store, words);
  let rows = all;
  for (const column of ["ticket", "claim", "lot", "bench", "state"] as const) {
    const value = filters[column];
    if (value !== undefined) rows = rows.where(sql<boolean>`${at(column, few)} = ${value}`);
  }
  const { from, until, dryFromG, dryToG, photo, voided } = filters;
  if (from !== undefined) rows = rows.where(sql<boolean>`${at("at", few)} >= ${from}`);
  if (until !== undefined) rows = rows.where(sql<boolean>`${at("at", few)} < ${until}`);
  // of many benches the months lie apart, by place
  const apart = store.dialect === "postgres";
  if (apart && from !== undefined) rows = rows.where("records.seq", ">=", placeAt(from));
  if (apart && until !== undefined) rows = rows.where("records.seq", "<", placeAt(until));
  if (dryFromG !== undefined) rows = rows.where(sql<boolean>`${at("dry_g", !few)} >= ${dryFromG}`);
  if (dryToG !== undefined) rows = rows.where(sql<boolean>`${at("dry_g", !few)} <= ${dryToG}`);
  if (photo !== undefined) rows = rows.where("records.photos", photo ? ">" : "=", 0);
  if (voided !== undefined) rows = rows.where("records.voided", "=", voided ? 1 : 0);
  return { rows, order };
}

/** True when SQLite shall read a range of dry masses through its index; PostgreSQL decides that by itself. */
async function isNarrow({ db, dialect }: Store, { dryFromG, dryToG }: RecordFilters): Promise<boolean> {
  if (dialect !== "sqlite" || dryFromG === undefined || dryToG === undefined) return false;
  const within = db
    .selectFrom("records")
    .select("seq")
    .where("dry_g", ">=", dryFromG)
    .where("dry_g", "<=", dryToG)
    .limit(fewRows + 1)
    .as("within");
  const { count } = await db
    .selectFrom(within)
    .select((select) => select.fn.countAll<number>().as("count"))
    .executeTakeFirstOrThrow();
  return Number(count) <= fewRows;
}

type Rows = SelectQueryBuilder<Tables, "records", object>;

/**
 * The rows that hold every word, by reading what each row says: for few rows, and where names are looked for, which no
 * index holds; `brought` are the references of the names that each word begins. The words are letters and digits only.
 */
function spelled(
  { db }: Store,
  words: string[],
  brought: readonly (readonly string[])[],
): { rows: Rows; order: RawBuilder<number> } {
  let rows = db.selectFrom("records");
  for (const [place, word] of words.entries())
    rows = rows.where(({ eb, or }) =>
      or([
        sql<boolean>`' ' || records.search like ${`% ${word}%`}`,
        ...(brought[place]?.length ? [eb("records.customer", "in", [...brought[place]])] : []),
      ]),
    );
  return { rows, order: sql<number>`records.seq` };
}

/** The rows that hold every word, and the expression that puts them in order without sorting. */
function found({ db, dialect }: Store, words: string[]): { rows: Rows; order: RawBuilder<number> } {
  const order = sql<number>`records.seq`;
  const rows = db.selectFrom("records");
  if (words.length === 0) return { rows, order };
  if (dialect === "postgres") {
    const match = words.map((word) => `${word}:*`).join(" & ");
    return {
      rows: rows.where(sql<boolean>`to_tsvector('simple', records.search) @@ to_tsquery('simple', ${match})`),
      order,
    };
  }
  const match = words.map((word) => `"${word}"*`).join(" ");
  // A cross join keeps SQLite from turning the loops round: the full-text index goes first, newest row first.
  const joined = db
    .selectFrom("record_words")
    .crossJoin("records")
    .whereRef("records.seq", "=", "record_words.rowid")
    .where(sql<boolean>`record_words match ${match}`);
  return { rows: joined as unknown as Rows, order: sql<number>`record_words.rowid` };
}
