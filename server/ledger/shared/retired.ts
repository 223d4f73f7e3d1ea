import type { Ledger } from "../ledger.ts";

/** Rows of a chain that were kept for as long as they had to be and are gone; what proves the others stays. */
export interface RetiredRun {
  /** the row before the first that is gone */
  after: number;
  /** the last that is gone */
  upto: number;
  before_hash: string;
  hash: string;
  /** roots of the full subtrees of the first `upto` entries, largest first, with a space between */
  peaks: string;
}

/** Kinds that stay when their month is retired: who signs, what was signed, and how long records are kept. */
export const stayingKinds = [
  "ledger-opened",
  "signing-key",
  "checkpoint",
  "cosignature",
  "witnessed",
  "retention",
] as const satisfies Parameters<Ledger["append"]>[0][];
