import { LedgerError } from "./error.ts";
import type { Ledger } from "./ledger.ts";
import { batchAfter } from "./shared/batch.ts";
import { ownChain } from "./shared/own-chain.ts";
import { ChainMoved, type SharedLedger } from "./shared/shared-ledger.ts";

/** Another program may hand over the same ledger at the same time; so often it is looked where the chain ends now. */
const mostMoves = 100;

/**
 * Hands the chain of a bench's own ledger over to a shared one, row by row as it stands, from where it ends there. Doing
 * it again, after a break or twice at once, writes nothing twice: a batch follows one row, and only one can.
 * Gives how many rows were written. Throws LedgerError when either ledger does; what was written stays. `onHanded` hears
 * each row up to which everything stands in the shared ledger.
 */
export async function replicate(
  own: Ledger,
  shared: SharedLedger,
  { site = "", onHanded = () => undefined }: { site?: string; onHanded?: (seq: number) => void } = {},
): Promise<number> {
  const [first] = await own.entries({ limit: 1 });
  if (!first) return 0;
  let written = 0;
  for (let moves = 0; moves < mostMoves; moves += 1) {
    let chain = await ownChain(own, shared, first.hash);
    try {
      while (chain) {
        onHanded(chain.seq);
        const batch = await batchAfter(own, site, chain);
        if (!batch) return written;
        await shared.take(batch);
        written += batch.rows.length;
        const { seq, moment } = batch.rows.at(-1) ?? chain;
        chain = { ...chain, seq, moment };
      }
      return written;
    } catch (cause) {
      if (!(cause instanceof ChainMoved)) throw cause;
    }
  }
  throw new LedgerError("ledger.replication.slow", {}, "busy");
}
