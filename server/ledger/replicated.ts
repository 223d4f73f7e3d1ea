import {
  checkpointDraft,
  checkpointOf,
  type Draft,
  inTransaction,
  lastCheckpoint,
  rowAfter,
} from "./append.ts";
import { canonicalJson } from "./canonical-json.ts";
import { checkpointEvery } from "./checkpoint.ts";
import { treeAt } from "./checkpoint-tree.ts";
import { contentText, type Entry } from "./entry.ts";
import { LedgerError } from "./error.ts";
import { checkedBody } from "./kinds.ts";
import { projectSubjects } from "./projection.ts";
import { lastRow, nameOf } from "./rows.ts";
import type { SigningKey } from "./signing-key.ts";
import type { EntryRow, Store, Trx } from "./tables.ts";
import { leafHash } from "./tree.ts";

/** What became of entries that were handed over. */
export interface Replicated {
  /** written now */
  written: number;
  /** stood there already */
  stood: number;
}

/**
 * Writes entries of another ledger with their ids, times and places in the chain they come from, all of them or none in
 * one transaction. An entry that stands with the same content is passed over; throws LedgerError "refused" where it stands with another.
 */
export async function appendReplicatedTo(
  store: Store,
  entries: readonly Entry[],
  { bench, at, key }: By,
): Promise<Replicated> {
  const drafts = entries.map(draftOf);
  return inTransaction(store, async (trx) => {
    const fresh = await notYetStanding(trx, drafts, store.place);
    if (fresh.length > 0) {
      const rows = await rowsAtEnd(trx, fresh, { bench, at, key });
      await trx.insertInto("entries").values(rows).execute();
      await projectSubjects(trx, fresh);
    }
    return { written: fresh.length, stood: entries.length - fresh.length };
  });
}

/** The rows by which the chain goes on, checkpoints among them as often as they are due. */
async function rowsAtEnd(trx: Trx, fresh: readonly Handed[], { bench, at, key }: By): Promise<EntryRow[]> {
  const head = await lastRow(trx);
  const rows: EntryRow[] = [];
  const add = (draft: Draft, body: string): EntryRow => {
    const row = rowAfter(rows.at(-1) ?? head, draft, body);
    rows.push(row);
    return row;
  };
  const start = head?.seq ?? 0;
  let signed = key ? ((await lastCheckpoint(trx))?.seq ?? 0) : start;
  if (!key || start + fresh.length - signed < checkpointEvery) {
    for (const draft of fresh) add(draft, draft.body);
    return rows;
  }
  const tree = await treeAt(trx, start);
  const name = await nameOf({ db: trx });
  const grow = (row: EntryRow) => tree.add(leafHash(contentText(row)));
  for (const draft of fresh) {
    const row = add(draft, draft.body);
    grow(row);
    if (row.seq - signed < checkpointEvery || draft.kind === "checkpoint") continue;
    const checkpoint = checkpointOf(row, { key, tree, name });
    const own = add(checkpointDraft(checkpoint, { bench, at }), canonicalJson(checkpoint));
    grow(own);
    signed = own.seq;
  }
  return rows;
}

/** Who writes them, when, and the key that signs for it. */
interface By {
  bench: string;
  at: string;
  key: SigningKey | undefined;
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
