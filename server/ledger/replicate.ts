import type { Ledger } from "./ledger.ts";
import type { Replicated } from "./replicated.ts";

/** Handed over at a time. */
const batch = 500;

/**
 * Hands the entries of a bench's own ledger over to a shared one, in order, each with its id, its time and its place
 * and hash in the chain it came from. Doing it again, after a break or twice, writes nothing twice: an entry that
 * stands is passed over. Checkpoints and keys go along, so that the bench's own chain can still be proved.
 * Throws LedgerError when either ledger does, and when an id stands with another content; what was written stays.
 * `onHanded` hears each row up to which everything stands in the shared ledger.
 */
export async function replicate(
  own: Ledger,
  shared: Ledger,
  onHanded: (seq: number) => void = () => undefined,
): Promise<Replicated> {
  const outcome = { written: 0, stood: 0 };
  for (let after = await handedUpTo(own, shared); ; ) {
    onHanded(after);
    const entries = await own.entries({ after, limit: batch });
    const last = entries.at(-1);
    if (!last) return outcome;
    const { written, stood } = await shared.appendReplicated(entries);
    outcome.written += written;
    outcome.stood += stood;
    after = last.seq;
  }
}

/**
 * The last row that was handed over. Rows go over in order, so halving finds it in a few questions. A key that a bench
 * introduced to the shared ledger itself does not count: it says nothing about the rows before it.
 */
async function handedUpTo(own: Ledger, shared: Ledger): Promise<number> {
  let low = 0;
  let high = (await own.head())?.seq ?? 0;
  const stands = async (seq: number) => {
    const [entry] = await own.entries({ after: seq - 1, limit: 1 });
    return entry !== undefined && (await shared.entry(entry.id))?.origin !== undefined;
  };
  if (high > 0 && (await stands(high))) return high;
  while (low + 1 < high) {
    const middle = Math.floor((low + high) / 2);
    if (await stands(middle)) low = middle;
    else high = middle;
  }
  return low;
}
