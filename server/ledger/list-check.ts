import { sql } from "kysely";
import { keysOf } from "../../calibration/keyed.ts";
import { type Message, message } from "../../calibration/message.ts";
import type { Entry } from "./entry.ts";
import { recordRow, toldKinds } from "./projection.ts";
import { aboutSubjects } from "./rows.ts";
import type { RecordRow, Store } from "./tables.ts";
import type { Steps } from "./turns.ts";

/** Whether the list of records says what follows from the chain; `says` names the first record where it does not. */
export type ListCheck = { good: true; records: number } | { good: false; records: number; message: Message };

const pageRows = 100;

/**
 * Makes every row of the list again from the entries and compares; counts that none is missing, in the list and in the
 * index the search uses. The chain itself is not looked at: `verifyChain` does that.
 */
export async function verifyList(store: Store, { signal }: Steps = {}): Promise<ListCheck> {
  const { db } = store;
  let records = 0;
  for (let after = 0; ; ) {
    const rows = await db
      .selectFrom("records")
      .selectAll()
      .where("seq", ">", after)
      .orderBy("seq")
      .limit(pageRows)
      .execute();
    const last = rows.at(-1);
    if (!last) break;
    const entries = await aboutSubjects(
      db,
      rows.map(({ subject }) => subject),
      toldKinds,
    );
    for (const row of rows) {
      const fault = faultOf(row, entries.get(row.subject) ?? [], store.dialect);
      if (fault !== null) return { good: false, records, message: fault };
      records += 1;
    }
    after = last.seq;
    signal?.throwIfAborted();
  }
  return (await missing(store, records)) ?? { good: true, records };
}

/** In a list of many benches a row has a place of its own, and where two wrote about one piece each may see it in another order. */
function faultOf(row: RecordRow, entries: Entry[], dialect: Store["dialect"]): Message | null {
  const right = recordRow(entries);
  if (!right) return message("ledger.list.unknown", { subject: row.subject });
  const ofMany = dialect === "postgres";
  if (ofMany && new Set(entries.map(({ bench }) => bench)).size > 1) return null;
  for (const column of keysOf(right))
    if (!(ofMany && column === "seq") && row[column] !== right[column])
      return message("ledger.list.other-value", {
        column,
        shown: JSON.stringify(row[column]),
        subject: row.subject,
        right: JSON.stringify(right[column]),
      });
  return null;
}

async function missing({ db, dialect }: Store, records: number): Promise<ListCheck | null> {
  const unlisted = await db
    .selectFrom("entries")
    .select("entries.subject")
    .leftJoin("records", "records.subject", "entries.subject")
    .where("entries.kind", "in", ["result", "imported-weighing"])
    .where("records.subject", "is", null)
    .limit(1)
    .executeTakeFirst();
  if (unlisted)
    return { good: false, records, message: message("ledger.list.missing", { subject: unlisted.subject }) };
  if (dialect === "postgres") return null;
  const { rows } = await sql<{ words: number }>`select count(*) as words from record_words`.execute(db);
  const words = rows[0]?.words ?? 0;
  return words === records
    ? null
    : { good: false, records, message: message("ledger.list.search", { searched: words, records }) };
}
