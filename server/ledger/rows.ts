import type { Entry, Origin } from "./entry.ts";
import { logName } from "./note.ts";
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

/** The name by which others know a ledger: from the hash of its first entry. Throws where there is none. */
export async function nameOf({ db }: { db: Store["db"] | Trx }): Promise<string> {
  const first = await db.selectFrom("entries").select("hash").where("seq", "=", 1).executeTakeFirstOrThrow();
  return logName(first.hash);
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

/** Everything written about each of the subjects, of these kinds or all, oldest first. */
export async function aboutSubjects(
  db: Store["db"] | Trx,
  subjects: readonly string[],
  kinds?: readonly string[],
): Promise<Map<string, Entry[]>> {
  const rows = await db
    .selectFrom("entries")
    .selectAll()
    .where("subject", "in", subjects)
    .$if(kinds !== undefined, (some) => some.where("kind", "in", kinds ?? []))
    .orderBy("seq")
    .execute();
  const about = new Map<string, Entry[]>();
  for (const row of rows) {
    const entry = entryOf(row);
    const list = about.get(entry.subject);
    if (list) list.push(entry);
    else about.set(entry.subject, [entry]);
  }
  return about;
}
