import type { Message } from "../../calibration/message.ts";
import type { Checkpoint } from "./checkpoint.ts";
import type { CustomerNames } from "./customer-names.ts";
import type { Entry, EntryOf } from "./entry.ts";
import type { BodyOf, Kind } from "./kinds.ts";
import type { ListCheck } from "./list-check.ts";
import type { RecordFile } from "./record-file.ts";
import type { MeasurementRecord, RecordPage, RecordQuery } from "./records.ts";
import type { Replicated } from "./replicated.ts";
import type { SigningKey } from "./signing-key.ts";
import type { Counted, CountedGroup, Grouping, Range } from "./statistics.ts";
import type { Steps } from "./turns.ts";
import type { Verification, VerifyOptions } from "./verification.ts";

export interface EntryQuery {
  /** entries with seq > after */
  after?: number;
  before?: number;
  kind?: Kind | Kind[];
  /** only what was written here first, not what other benches handed over */
  own?: boolean;
  limit?: number;
  newestFirst?: boolean;
}

/** An append-only record of what happened at a bench. Nothing in it is ever changed or deleted. */
export interface Ledger {
  readonly bench: string;
  /** the file or database, for messages */
  readonly place: string;
  /** names of customers, kept apart from it; null for a database that several benches share */
  readonly names: CustomerNames | null;
  /** what was found on opening, for the page; empty when all was well */
  readonly found: readonly Message[];
  /** why the last entry could not be stored, when the disk is full, failing or not to be written; null once one was */
  readonly notStored: Message | null;
  /** the key that signs for this ledger; null when it is not signed from here */
  readonly key: Pick<SigningKey, "keyId" | "publicKey" | "sign"> | null;
  /**
   * Writes an entry and resolves when it is on the disk. `key` makes it idempotent: the same key and content again
   * gives the entry that stands. Throws LedgerError; then nothing was stored.
   */
  append<K extends Kind>(
    kind: K,
    subject: string,
    body: BodyOf<K>,
    options?: AppendOptions,
  ): Promise<EntryOf<K>>;
  /**
   * Writes several entries about one subject, all or none, and resolves when they are on the disk. `after` is how many
   * entries about the subject they rest on. Throws Stale when there are more by now, and LedgerError.
   */
  appendAll(subject: string, happened: readonly Happened[], after: number): Promise<Entry[]>;
  /**
   * Writes entries of another ledger as they stood there, all or none; those that stand here already are passed over.
   * Throws LedgerError where one stands with another content.
   */
  appendReplicated(entries: readonly Entry[]): Promise<Replicated>;
  /**
   * Writes a long list of entries, some at a time, each unless it stands already under its key; between them others
   * write and read. Gives how many were written; `signal` ends it between two of them. Throws LedgerError; then the
   * first ones stand.
   */
  appendEach(happened: Iterable<Listed>, options?: Steps): Promise<number>;
  /** everything about one subject, oldest first */
  entriesOf(subject: string): Promise<Entry[]>;
  /** the same of several subjects at once */
  entriesOfEach(subjects: readonly string[]): Promise<Map<string, Entry[]>>;
  entries(query?: EntryQuery): Promise<Entry[]>;
  entry(id: string): Promise<Entry | null>;
  /** place and hash of the last entry; null in an empty ledger */
  head(): Promise<{ seq: number; hash: string } | null>;
  /** finished measurements, newest first */
  records(query?: RecordQuery): Promise<RecordPage>;
  /** finished measurements of other lots since a moment (ISO 8601), newest first, at most so many; none that is void */
  recordsOfOtherLots(lot: string, since: string, most: number): Promise<MeasurementRecord[]>;
  /** how many finished measurements there are in a range, and how they came out */
  countedIn(range: Range): Promise<Counted>;
  /** the same by one thing, the largest group first */
  countedBy(range: Range, grouping: Grouping): Promise<CountedGroup[]>;
  /** readings of the newest measurements of a range that stand, and what was excluded of them, oldest first */
  readingsWithin(range: Range, mostRecords: number): Promise<Entry[]>;
  /** walks the whole chain; rejects with the reason of a signal that stops it */
  verify(options?: VerifyOptions, steps?: Steps): Promise<Verification>;
  /** compares the list of records with what follows from the entries; stopped likewise */
  verifyList(steps?: Steps): Promise<ListCheck>;
  /** signs the chain as it stands; null when there is no key or no entry */
  checkpoint(): Promise<Checkpoint | null>;
  /**
   * One subject as a file that proves its entries, how many there are and how it stands, as of now. Writes nothing.
   * Throws LedgerError when there is no such subject, or no key at hand to sign with.
   */
  recordFile(subject: string): Promise<RecordFile>;
  /** the name by which others know it, from its first entry */
  name(): Promise<string>;
  /** proof (RFC 9162) that the tree of the first `size` entries begins with that of `old`, for whoever saw the older one */
  consistencyProof(old: number, size: number): Promise<Buffer[]>;
  /** the ways up (RFC 9162) from these rows to the root of the tree of the first `size` entries */
  inclusionProofs(rows: readonly number[], size: number): Promise<Map<number, Buffer[]>>;
  /** the line by which the key of this ledger cosigns the checkpoint of another, as of now; null without a key */
  cosign(text: string): Promise<string | null>;
  /** signs what is not signed yet and lets go of the file */
  close(): Promise<void>;
}

/** Something that happened, as it is to be written; `key` becomes the id of its entry. */
export type Happened = { [K in Kind]: { kind: K; body: BodyOf<K>; key?: string } }[Kind];

/** One of a long list, by a key that says the same row again. */
export type Listed = Happened & { subject: string; key: string };

export interface AppendOptions {
  /** idempotency key; becomes the id of the entry */
  key?: string;
}
