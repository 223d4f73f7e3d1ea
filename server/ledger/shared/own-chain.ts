import type { Ledger } from "../ledger.ts";
import type { NamedHead, SharedLedger } from "./shared-ledger.ts";

/** The chain of a bench in a shared ledger, how far it goes there, and up to where its rows stand in another chain. */
export interface OwnChain {
  chain: string;
  seq: number;
  /** of the row where it ends there; 0 before the first */
  moment: number;
  /** a ledger that was restored from a backup goes on from a row in its middle: up to there another chain has the rows */
  sharedUpTo: number;
}

/**
 * The chain by which a bench's ledger stands in the shared one: the one whose end is a row of it. Where none is, this
 * ledger was restored from a backup and went on by itself since: it becomes a chain beside the one that was before,
 * named by the row in which they part. Null while that row is not written.
 */
export async function ownChain(own: Ledger, shared: SharedLedger, first: string): Promise<OwnChain | null> {
  const heads = await shared.heads(first);
  if (heads.length === 0) return { chain: first, seq: 0, moment: 0, sharedUpTo: 0 };
  let common = 0;
  for (const head of heads) {
    if ((await hashAt(own, head.seq)) === head.hash) return { ...head, sharedUpTo: sharedBy(head.chain) };
    common = Math.max(common, await commonRows(own, shared, head));
  }
  const parts = await hashAt(own, common + 1);
  return parts === undefined
    ? null
    : { chain: `${first}/${common}/${parts}`, seq: 0, moment: 0, sharedUpTo: common };
}

const sharedBy = (chain: string) => Number(chain.split("/")[1] ?? 0);

async function hashAt(own: Ledger, seq: number): Promise<string | undefined> {
  const [entry] = await own.entries({ after: seq - 1, limit: 1 });
  return entry?.seq === seq ? entry.hash : undefined;
}

/** How many rows two chains have in common from the first on: rows that differ never meet again, so halving finds it. */
async function commonRows(own: Ledger, shared: SharedLedger, { chain, seq }: NamedHead): Promise<number> {
  let [low, high] = [0, Math.min(seq, (await own.head())?.seq ?? 0) + 1];
  while (low + 1 < high) {
    const middle = Math.floor((low + high) / 2);
    const [there] = await shared.rowsOf(chain, middle - 1, 1);
    if (there?.hash === (await hashAt(own, middle))) low = middle;
    else high = middle;
  }
  return low;
}
