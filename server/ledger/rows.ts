import type { Entry, Origin } from "./entry.ts";
import type { EntryRow, Store, Trx } from "./tables.ts";

/** The row as an entry, its body read. */
export function entryOf(row: EntryRow): Entry {
  const { seq, id, bench, at, kind, subject, body, origin, prev_hash, hash } = row;
  return {
    seq,
    id,
    bench,
    at,
    kind,
    subject,
    body: JSON.parse(body),
    ...(origin === null ? {} : { origin: JSON.parse(origin) as Origin }),
    prevHash: prev_hash,
    hash,
  } as Entry;
}

/** The last row of the chain. */
export async function lastRow(db: Store["db"] | Trx): Promise<EntryRow | undefined> {
  return db.selectFrom("entries").selectAll().orderBy("seq", "desc").limit(1).executeTakeFirst();
}

/** Everything written about a subject, oldest first. */
export async function aboutSubject(db: Store["db"] | Trx, subject: string): Promise<Entry[]> {
  const rows = await db
    .selectFrom("entries")
    .selectAll()
    .where("subject", "=", subject)
    .orderBy("seq")
    .execute();
  return rows.map(entryOf);
}
