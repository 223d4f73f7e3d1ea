import { inTransaction } from "./append.ts";
import { canonicalJson } from "./canonical-json.ts";
import type { Entry } from "./entry.ts";
import { LedgerError } from "./error.ts";
import { checkedBody } from "./kinds.ts";
import { type By, notYetStanding, type Written, writeAtEnd } from "./rows-at-end.ts";
import type { Store } from "./tables.ts";

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
  by: By,
): Promise<Replicated> {
  const drafts = entries.map(draftOf);
  return inTransaction(store, async (trx) => {
    // what stands stays, so that this may be asked before others have to wait
    const fresh = await notYetStanding(
      trx,
      drafts,
      ({ id, bench, seq }, there) =>
        new LedgerError(
          "ledger.replication.other-content",
          { id, bench, row: seq, place: store.place, there: there.seq },
          "refused",
        ),
    );
    if (fresh.length > 0) {
      await writeAtEnd(trx, fresh, by);
    }
    return { written: fresh.length, stood: entries.length - fresh.length };
  });
}

/** An entry of another ledger, with its row there. */
type Handed = Written & { seq: number };

function draftOf({ id, kind, subject, body, bench, at, seq, prevHash, hash, origin }: Entry): Handed {
  const text = canonicalJson(checkedBody(kind, body));
  return { id, kind, subject, body: text, bench, at, seq, origin: origin ?? { seq, prevHash, hash } };
}
