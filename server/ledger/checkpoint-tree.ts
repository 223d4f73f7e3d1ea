import { setImmediate as nextTurn } from "node:timers/promises";
import type { Checkpoint } from "./checkpoint.ts";
import { contentText } from "./entry.ts";
import type { Store, Trx } from "./tables.ts";
import { consistencyProof, leafHash, Tree } from "./tree.ts";

const pageRows = 200;

/** The tree that a checkpoint carries; undefined in those from before there was one. */
function treeOf({ seq, peaks }: Pick<Checkpoint, "seq" | "peaks">): Tree | undefined {
  return (
    peaks &&
    new Tree(
      seq,
      peaks.map((peak) => Buffer.from(peak, "hex")),
    )
  );
}

/** The tree of the first `size` entries: grown from the last checkpoint that carries one, else from the first entry on. */
export async function treeAt(db: Store["db"] | Trx, size: number): Promise<Tree> {
  const tree = (await lastTree(db, size)) ?? new Tree();
  while (tree.size < size) {
    const rows = await db
      .selectFrom("entries")
      .selectAll()
      .where("seq", ">", tree.size)
      .where("seq", "<=", size)
      .orderBy("seq")
      .limit(pageRows)
      .execute();
    if (rows.length === 0) throw new RangeError(`There are ${tree.size} entries and not ${size}.`);
    for (const row of rows) tree.add(leafHash(contentText(row)));
    if (tree.size < size) await nextTurn();
  }
  return tree;
}

async function lastTree(db: Store["db"] | Trx, size: number): Promise<Tree | undefined> {
  const last = await db
    .selectFrom("entries")
    .select("body")
    .where("kind", "=", "checkpoint")
    .where("origin", "is", null)
    .where("seq", "<=", size)
    .orderBy("seq", "desc")
    .limit(1)
    .executeTakeFirst();
  return last && treeOf(JSON.parse(last.body) as Checkpoint);
}

/** The proof that the tree of `size` entries begins with that of `old`. Throws RangeError when there are not so many. */
export async function grownFrom({ db }: Store, old: number, size: number): Promise<Buffer[]> {
  if (old === 0 || old === size) return [];
  const before = await treeAt(db, old);
  const added: Buffer[] = [];
  while (before.size + added.length < size) {
    const rows = await db
      .selectFrom("entries")
      .selectAll()
      .where("seq", ">", before.size + added.length)
      .where("seq", "<=", size)
      .orderBy("seq")
      .limit(pageRows)
      .execute();
    if (rows.length === 0) throw new RangeError(`There are not ${size} entries.`);
    for (const row of rows) added.push(leafHash(contentText(row)));
    await nextTurn();
  }
  return consistencyProof(before, added);
}
