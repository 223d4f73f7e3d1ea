import { type Draft, inTransaction, mustBeAName, noteClockJump, standsOtherwise } from "./append.ts";
import { canonicalJson } from "./canonical-json.ts";
import { checkedBody } from "./kinds.ts";
import { type By, notYetStanding, writeAtEnd } from "./rows-at-end.ts";
import type { Store } from "./tables.ts";

/**
 * Writes some entries of a list in one transaction, all of them or none, each unless its id stands already with the same
 * kind, subject and body. No id is twice among them. Gives how many were written. Throws LedgerError "refused" where an
 * id stands with another content.
 */
export async function appendSliceTo(store: Store, drafts: readonly Draft[], by: By): Promise<number> {
  const written = drafts.map((draft) => {
    for (const name of ["id", "subject", "bench"] as const) mustBeAName(name, draft[name]);
    return { ...draft, body: canonicalJson(checkedBody(draft.kind, draft.body)) };
  });
  return inTransaction(store, async (trx) => {
    const fresh = await notYetStanding(trx, written, standsOtherwise);
    const [first] = fresh;
    if (!first) return 0;
    await noteClockJump(trx, first);
    await writeAtEnd(trx, fresh, by);
    return fresh.length;
  });
}
