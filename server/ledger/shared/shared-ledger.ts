import type { Kind } from "../kinds.ts";
import type { EntryRow, RecordRow } from "../tables.ts";

/** A row of the list as it is handed over: in the place of `seq`, which counts in one ledger only, how much it follows from. */
export interface ListedRow extends Omit<RecordRow, "seq"> {
  /** entries about the subject that it follows from; of two rows about one subject the one with more counts */
  told: number;
  /** true when one was handed over before, by this bench or another */
  replaces: boolean;
}

/** A row of a chain. Where it is not kept here, its body stands in another chain, under its id, and is left out. */
export interface ChainRow extends EntryRow {
  here: boolean;
  /** Its time in µs, and later than every row before it: by it rows of several chains have one order, also where a clock went back. */
  moment: number;
}

/** Rows that follow each other in the chain of one bench, and what the list says by them. */
export interface Batch {
  chain: string;
  bench: string;
  site: string;
  rows: readonly ChainRow[];
  records: readonly ListedRow[];
}

/** The end of a chain, by number and hash. */
interface ChainHead {
  seq: number;
  hash: string;
  moment: number;
}

/** A chain, and where it ends. Its name begins with the hash of its first entry. */
export interface NamedHead extends ChainHead {
  chain: string;
}

/** Another batch came first, or the one before is not there: whoever sent it asks for the head and goes on from it. */
export class ChainMoved extends Error {}

/** What several benches of a house send their chains to. Everything throws LedgerError when it cannot be reached. */
export interface SharedLedger {
  /** for messages, without a password */
  readonly place: string;
  /** the chains that begin with an entry of this hash: one, or more where the ledger was once restored from a backup */
  heads(first: string): Promise<NamedHead[]>;
  /** Appends a batch, all or nothing, and resolves when it is on the disk there. Throws ChainMoved. */
  take(batch: Batch): Promise<void>;
  /** all chains of a site */
  chains(site: string): Promise<NamedHead[]>;
  /** rows of a chain after a number, oldest first, each with its body; of some kinds only, where they are named */
  rowsOf(chain: string, after: number, most: number, kinds?: readonly Kind[]): Promise<ChainRow[]>;
  /** calls whenever a bench of the site appended something; where that cannot be heard, never */
  onNews(site: string, called: () => void): void;
  close(): Promise<void>;
}
