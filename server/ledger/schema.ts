import { type Kysely, sql } from "kysely";
import { LedgerError } from "./error.ts";
import { rebuildRecords } from "./projection.ts";
import type { Store, Tables, Trx } from "./tables.ts";

type Step = (db: Trx) => Promise<void>;

/** Released schemas, oldest first. A step is never changed once released; a new one is added below. */
const steps: Step[] = [first, second, third, fourth];

export const currentSchema = steps.length;

/** Brings the database to the current schema, in one transaction. Throws LedgerError "newer" when a newer Underhook wrote it. */
export async function migrate(store: Store, at: string): Promise<void> {
  await store.db.transaction().execute(async (trx) => {
    await sql`create table if not exists schema_versions (version integer primary key, at text not null)`.execute(
      trx,
    );
    const version = await schemaVersion(store, trx);
    for (const [index, step] of steps.entries()) {
      if (index < version) continue;
      await step(trx);
      await trx
        .insertInto("schema_versions")
        .values({ version: index + 1, at })
        .execute();
    }
  });
}

/** The schema the database has; 0 when it is empty. */
export async function schemaVersion({ db, place }: Store, trx: Kysely<Tables> = db): Promise<number> {
  const row = await trx
    .selectFrom("schema_versions")
    .select((select) => select.fn.max("version").as("version"))
    .executeTakeFirst();
  const version = row?.version ?? 0;
  if (version > currentSchema)
    throw new LedgerError("ledger.schema.newer", { place, schema: version, known: currentSchema }, "newer");
  return version;
}

async function first(db: Trx): Promise<void> {
  await sql`create table entries (
    seq integer primary key, id text not null unique, bench text not null, at text not null, kind text not null,
    subject text not null, body text not null, origin text, prev_hash text not null unique, hash text not null unique
  ) strict`.execute(db);
  await sql`create index entries_by_subject on entries (subject, seq)`.execute(db);
  await sql`create index entries_by_kind on entries (kind, seq)`.execute(db);
  await sql`create table records (
    seq integer primary key, subject text not null unique, entry_id text not null, entry_hash text not null,
    at text not null, bench text not null, ticket text not null, description text not null, claim text, lot text,
    operator text, state text, mass_g real not null, density_g_cm3 real not null, expanded_g_cm3 real,
    voided integer not null, amendments integer not null, search text not null
  ) strict`.execute(db);
  for (const column of ["ticket", "claim", "lot", "state", "bench", "at"])
    await sql`create index ${sql.raw(`records_by_${column}`)} on records (${sql.raw(column)}, seq)`.execute(
      db,
    );
  // A month of one metal among a million is found by both at once, not by walking through all of either.
  for (const column of ["claim", "state"])
    await sql`create index ${sql.raw(`records_by_${column}_at`)} on records (${sql.raw(column)}, at)`.execute(
      db,
    );
  await appendOnly(db);
}

/** Who brought a piece, what the balance showed for it, and its photos; the list is made again from the entries. */
async function second(db: Trx): Promise<void> {
  await sql`alter table records add column customer text`.execute(db);
  await sql`alter table records add column dry text not null default ''`.execute(db);
  await sql`alter table records add column dry_g real not null default 0`.execute(db);
  await sql`alter table records add column photos integer not null default 0`.execute(db);
  await sql`create index records_by_dry_g on records (dry_g, seq)`.execute(db);
  await rebuildRecords(db);
}

/** States of finished measurements by the words of `conformity/state.ts`; what the entries say stays as it was written. */
async function third(db: Trx): Promise<void> {
  await sql`update records set state = case
    when state = 'agrees' then 'consistent' when state = 'agrees-not-alone' then 'consistent-not-unique'
    when state = 'disagrees' then 'excluded' when claim is null then 'no-claim' else 'inconclusive' end
    where state in ('agrees', 'agrees-not-alone', 'disagrees', 'undecided')`.execute(db);
}

/** A record whose readings are those of no density has none in the list. */
async function fourth(db: Trx): Promise<void> {
  await sql`alter table records rename column density_g_cm3 to density_before`.execute(db);
  await sql`alter table records add column density_g_cm3 real`.execute(db);
  await sql`update records set density_g_cm3 = density_before`.execute(db);
  await sql`alter table records drop column density_before`.execute(db);
}

/** Append-only by trigger, and the full-text index (sqlite.org/fts5.html). */
async function appendOnly(db: Kysely<Tables>): Promise<void> {
  for (const table of ["entries", "schema_versions"])
    for (const act of ["update", "delete"])
      await sql
        .raw(
          `create trigger ${table}_no_${act} before ${act} on ${table} begin
             select raise(abort, 'the ledger is append-only: no ${act} of ${table}'); end`,
        )
        .execute(db);
  // "insert or replace" deletes without firing the delete trigger, unless recursive_triggers is on.
  await sql`create trigger entries_no_replace before insert on entries
    when exists (select 1 from entries where seq = new.seq or id = new.id or hash = new.hash or prev_hash = new.prev_hash)
    begin select raise(abort, 'the ledger is append-only: no replace in entries'); end`.execute(db);
  await sql`create virtual table record_words using fts5(
    search, content='', contentless_delete=1, tokenize='unicode61', prefix='1 2 3 4')`.execute(db);
}
