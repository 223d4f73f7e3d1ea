import { setImmediate as nextTurn } from "node:timers/promises";
import { type Message, message } from "../../calibration/message.ts";
import { chainFault, originFault } from "./chain-fault.ts";
import { noHash } from "./entry.ts";
import { unshown } from "./not-shown.ts";
import { SignatureWalk, type Signed, type Trust } from "./signature-walk.ts";
import type { EntryRow, Store } from "./tables.ts";
import type { Steps } from "./turns.ts";

export type VerifyOptions = Trust;

export type Verification =
  | {
      good: true;
      /** entries in the chain, all good */
      entries: number;
      hash: string;
      /** how many checkpoints were checked, and the last row that one of a trusted key vouches for */
      checkpoints: number;
      signedUpTo: number;
      /** the trusted keys that signed, or, where no key is trusted, all that did */
      signedBy: string[];
      /** what this check cannot show, each with what would show it; none of it makes the ledger bad */
      notShown: Message[];
    }
  | {
      good: false;
      /** entries before the first bad row; they follow each other, which alone proves nothing */
      entries: number;
      /** the last row that a checkpoint of a trusted key vouches for */
      signedUpTo: number;
      /** the first row that is wrong */
      row: number;
      message: Message;
    };

/** Rows read at a time: some milliseconds of work, after which whatever else waits has its turn. */
const pageRows = 200;

/**
 * Walks the whole chain: every row's hash, its link to the row before, the numbering, what was handed over, every
 * signature and every root of the tree. Names the first row that was changed, removed, inserted or put elsewhere. Each
 * checkpoint must be of the trusted key or a successor it vouched for. Without a trusted key it is only shown that the
 * rows fit each other, which whoever rewrote them all can make so; `notShown` says it, and which rows were retired: of
 * those only the tree heads are left, and what follows must fit them.
 */
export async function verifyChain(
  store: Store,
  options: VerifyOptions,
  { onProgress, signal }: Steps = {},
): Promise<Verification> {
  const shared = store.manySign === true;
  const signatures = new SignatureWalk(options, shared);
  let [entries, hash] = [0, noHash];
  const retired = (await store.retired?.()) ?? [];
  let gone = 0;
  /** Goes over the runs that end before a row; what is wrong with one, or null. */
  const passRetired = (before: number): Message | null => {
    for (let run = retired[gone]; run && run.upto < before; run = retired[gone]) {
      if (run.after !== entries || run.before_hash !== hash || !signatures.jump(run))
        return message("ledger.fault.retired", { from: run.after + 1, to: run.upto });
      [entries, hash] = [run.upto, run.hash];
      gone += 1;
    }
    return null;
  };
  const bad = ({ row, message: found }: { row: number; message: Message }): Verification => ({
    ...{ good: false, entries: Math.min(entries, row - 1), row, message: found },
    signedUpTo: signatures.signed.upTo,
  });
  for (let after = 0; ; ) {
    const rows = await rowsAfter(store, after);
    for (const row of rows) {
      const broken = passRetired(row.seq);
      if (broken !== null) return bad({ row: entries + 1, message: broken });
      const stays = row.seq > (retired[gone]?.after ?? row.seq);
      const wrong = stays ? null : (chainFault(row, entries, hash) ?? originFault(row));
      if (wrong !== null) return bad({ row: entries + 1, message: wrong });
      const unsigned = stays ? signatures.staying(row) : signatures.step(row, hash);
      if (unsigned !== null) return bad(unsigned);
      if (!stays) [entries, hash] = [row.seq, row.hash];
    }
    const last = rows.at(-1);
    if (!last) break;
    after = last.seq;
    onProgress?.(after);
    await nextTurn();
    signal?.throwIfAborted();
  }
  const broken = passRetired(Number.POSITIVE_INFINITY);
  if (broken !== null) return bad({ row: entries + 1, message: broken });
  const wrong = signatures.end();
  if (wrong !== null) return bad(wrong);
  const signed: Signed = signatures.signed;
  return {
    ...{ good: true, entries, hash, checkpoints: signed.checkpoints, signedUpTo: signed.upTo },
    signedBy: signed.by,
    notShown: [
      ...retired.map(({ after, upto }) => message("ledger.not-shown.retired", { from: after + 1, to: upto })),
      ...unshown(entries, signed, options, shared),
    ],
  };
}

function rowsAfter({ db }: Store, after: number): Promise<EntryRow[]> {
  return db
    .selectFrom("entries")
    .selectAll()
    .where("seq", ">", after)
    .orderBy("seq")
    .limit(pageRows)
    .execute();
}

/** Checks only the last rows, for a quick look at start; null when they are good, else what is wrong. */
export async function verifyTail(store: Store, count: number): Promise<Message | null> {
  const rows = await store.db.selectFrom("entries").selectAll().orderBy("seq", "desc").limit(count).execute();
  let [before, hash] = [(rows.at(-1)?.seq ?? 1) - 1, rows.at(-1)?.prev_hash ?? noHash];
  for (const row of rows.reverse()) {
    const wrong = chainFault(row, before, hash) ?? originFault(row);
    if (wrong !== null) return wrong;
    before = row.seq;
    hash = row.hash;
  }
  return null;
}
