import { checkpointDraft, checkpointOf, type Draft, lastCheckpoint, rowAfter } from "./append.ts";
import { canonicalJson } from "./canonical-json.ts";
import { checkpointEvery } from "./checkpoint.ts";
import { treeAt } from "./checkpoint-tree.ts";
import { contentText } from "./entry.ts";
import type { LedgerError } from "./error.ts";
import { projectSubjects } from "./projection.ts";
import { lastRow, nameOf } from "./rows.ts";
import type { SigningKey } from "./signing-key.ts";
import type { EntryRow, Trx } from "./tables.ts";
import { leafHash } from "./tree.ts";

/** A draft whose body is text already. */
export type Written = Draft & { body: string };

/** Who writes rows, when, and the key that signs for it. */
export interface By {
  bench: string;
  at: string;
  key: SigningKey | undefined;
}

/** Writes these at the end of the chain, in a dozen statements however many they are. */
export async function writeAtEnd(trx: Trx, fresh: readonly Written[], by: By): Promise<void> {
  await trx
    .insertInto("entries")
    .values(await rowsAtEnd(trx, fresh, by))
    .execute();
  await projectSubjects(trx, fresh);
}

/** The rows by which the chain goes on, checkpoints among them as often as they are due. */
async function rowsAtEnd(trx: Trx, fresh: readonly Written[], { bench, at, key }: By): Promise<EntryRow[]> {
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

/** Those that do not stand yet; throws what `other` gives where one stands with another content. */
export async function notYetStanding<One extends Written>(
  trx: Trx,
  drafts: readonly One[],
  other: (draft: One, there: EntryRow) => LedgerError,
): Promise<One[]> {
  const stand = await trx
    .selectFrom("entries")
    .selectAll()
    .where(
      "id",
      "in",
      drafts.map(({ id }) => id),
    )
    .execute();
  const standing = new Map(stand.map((row) => [row.id, row]));
  return drafts.filter((draft) => {
    const there = standing.get(draft.id);
    if (there && (there.kind !== draft.kind || there.subject !== draft.subject || there.body !== draft.body))
      throw other(draft, there);
    return there === undefined;
  });
}
