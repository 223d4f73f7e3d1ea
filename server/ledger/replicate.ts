import { canonicalJson } from "./canonical-json.ts";
import type { Entry } from "./entry.ts";
import { LedgerError } from "./error.ts";
import type { Ledger } from "./ledger.ts";

export interface Replicated {
  /** entries written into the shared ledger now */
  written: number;
  /** of those that were looked at, entries that stood there already */
  stood: number;
}

/** Read at a time. */
const batch = 200;

/**
 * Hands the entries of a bench's own ledger over to a shared one, in order, each with its id, its time and its place
 * and hash in the chain it came from. Doing it again, after a break or twice, writes nothing twice: an entry that
 * stands is passed over. Checkpoints and keys go along, so that the bench's own chain can still be proved.
 * Throws LedgerError when either ledger does, and when an id stands with another content; what was written stays.
 */
export async function replicate(own: Ledger, shared: Ledger): Promise<Replicated> {
  const outcome = { written: 0, stood: 0 };
  for (let after = await handedUpTo(own, shared); ; ) {
    const entries = await own.entries({ after, limit: batch });
    for (const entry of entries) outcome[await handOne(entry, shared)] += 1;
    const last = entries.at(-1);
    if (!last) return outcome;
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

async function handOne(entry: Entry, shared: Ledger): Promise<keyof Replicated> {
  const { id, kind, subject, body, bench, at, seq, prevHash, hash } = entry;
  const stands = await shared.entry(id);
  if (stands && (stands.kind !== kind || stands.subject !== subject || !same(stands.body, body)))
    throw new LedgerError(
      "ledger.replication.other-content",
      { id, bench, row: seq, place: shared.place, there: stands.seq },
      "refused",
    );
  if (stands) return "stood";
  const origin = entry.origin ?? { seq, prevHash, hash };
  await shared.append(kind, subject, body, { key: id, handedOver: { bench, at, origin } });
  return "written";
}

function same(a: unknown, b: unknown): boolean {
  return canonicalJson(a) === canonicalJson(b);
}
