import { checkpointIfDue, type Draft, inTransaction, rowAfter } from "./append.ts";
import { canonicalJson } from "./canonical-json.ts";
import type { Entry } from "./entry.ts";
import { LedgerError } from "./error.ts";
import { checkedBody } from "./kinds.ts";
import { projectSubjects } from "./projection.ts";
import { lastRow } from "./rows.ts";
import type { SigningKey } from "./signing-key.ts";
import type { Store, Trx } from "./tables.ts";

/** What became of entries that were handed over. */
export interface TakenOver {
  /** written now */
  written: number;
  /** stood there already */
  stood: number;
}

/**
 * Writes entries of another ledger with their ids, times and places in the chain they come from, all of them or none, in
 * a transaction of a dozen statements however many they are: a network's delay is paid once for all. An entry that stands
 * with the same content is passed over; throws LedgerError "refused" where it stands with another.
 */
export async function takeOver(
  store: Store,
  entries: readonly Entry[],
  { bench, at, key }: { bench: string; at: string; key: SigningKey | undefined },
): Promise<TakenOver> {
  const drafts = entries.map(draftOf);
  return inTransaction(store, async (trx) => {
    await store.lockChain(trx);
    const fresh = await notYetStanding(trx, drafts, store.place);
    let head = await lastRow(trx);
    const rows = fresh.map((draft) => {
      head = rowAfter(head, draft, draft.body);
      return head;
    });
    if (rows.length > 0) await trx.insertInto("entries").values(rows).execute();
    await projectSubjects(trx, store.dialect, fresh);
    if (key) await checkpointIfDue(trx, { bench, at }, key);
    return { written: rows.length, stood: entries.length - rows.length };
  });
}

/** A draft whose body is text already. */
type Handed = Draft & { body: string; seq: number };

function draftOf({ id, kind, subject, body, bench, at, seq, prevHash, hash, origin }: Entry): Handed {
  const text = canonicalJson(checkedBody(kind, body));
  return { id, kind, subject, body: text, bench, at, seq, origin: origin ?? { seq, prevHash, hash } };
}

async function notYetStanding(trx: Trx, drafts: readonly Handed[], place: string): Promise<Handed[]> {
  const stand = await trx
    .selectFrom("entries")
    .select(["id", "seq", "kind", "subject", "body"])
    .where(
      "id",
      "in",
      drafts.map(({ id }) => id),
    )
    .execute();
  const standing = new Map(stand.map((row) => [row.id, row]));
  return drafts.filter(({ id, kind, subject, body, bench, seq }) => {
    const there = standing.get(id);
    if (there && (there.kind !== kind || there.subject !== subject || there.body !== body))
      throw new LedgerError(
        "ledger.replication.other-content",
        { id, bench, row: seq, place, there: there.seq },
        "refused",
      );
    return there === undefined;
  });
}
