import { randomUUID } from "node:crypto";
import { mkdirSync } from "node:fs";
import { dirname } from "node:path";
import type { Message } from "../../calibration/message.ts";
import type { Checkpoint } from "./checkpoint.ts";
import { keyFileIn } from "./data-folder.ts";
import type { Entry, EntryOf, Origin } from "./entry.ts";
import { LedgerError } from "./error.ts";
import type { BodyOf, Kind } from "./kinds.ts";
import { ledgerOn } from "./ledger-on-store.ts";
import type { ListCheck } from "./list-check.ts";
import type { RecordPage, RecordQuery } from "./records.ts";
import type { SigningKey } from "./signing-key.ts";
import { openSqlite } from "./sqlite.ts";
import type { Verification, VerifyOptions } from "./verification.ts";

export interface LedgerOptions {
  file: string;
  now: () => Date;
  /** name of the bench, written into every entry */
  bench: string;
  /** file of the Ed25519 key; default signing-key.pem beside the ledger; null for a ledger without checkpoints */
  keyFile?: string | null;
  /** only reads: takes no ownership, writes nothing, works while a bench is running */
  readOnly?: boolean;
  /** a fresh unique id; default a random UUID */
  newId?: () => string;
  /** a clock that cannot be set, ms: with it a clock set forward is written down too */
  monotonicMs?: () => number;
}

export interface EntryQuery {
  /** entries with seq > after */
  after?: number;
  before?: number;
  kind?: Kind | Kind[];
  limit?: number;
  newestFirst?: boolean;
}

/** An append-only record of what happened at a bench. Nothing in it is ever changed or deleted. */
export interface Ledger {
  readonly bench: string;
  /** the file or database, for messages */
  readonly place: string;
  /** what was found on opening, for the page; empty when all was well */
  readonly found: readonly Message[];
  /** why the last entry could not be stored, when the disk is full, failing or not to be written; null once one was */
  readonly notStored: Message | null;
  /** id and public key of the signing key; null when the ledger is not signed from here */
  readonly key: Pick<SigningKey, "keyId" | "publicKey"> | null;
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
  /** everything about one subject, oldest first */
  entriesOf(subject: string): Promise<Entry[]>;
  entries(query?: EntryQuery): Promise<Entry[]>;
  entry(id: string): Promise<Entry | null>;
  /** place and hash of the last entry; null in an empty ledger */
  head(): Promise<{ seq: number; hash: string } | null>;
  /** finished measurements, newest first */
  records(query?: RecordQuery): Promise<RecordPage>;
  verify(options?: VerifyOptions): Promise<Verification>;
  /** compares the list of records with what follows from the entries */
  verifyList(): Promise<ListCheck>;
  /** signs the chain as it stands; null when there is no key or no entry */
  checkpoint(): Promise<Checkpoint | null>;
  /** signs what is not signed yet and lets go of the file */
  close(): Promise<void>;
}

/** Something that happened, as it is to be written; `key` becomes the id of its entry. */
export type Happened = { [K in Kind]: { kind: K; body: BodyOf<K>; key?: string } }[Kind];

export interface AppendOptions {
  /** idempotency key; becomes the id of the entry */
  key?: string;
  /** for entries handed over from another ledger: who saw it, when, and where it stood there */
  handedOver?: { bench: string; at: string; origin: Origin };
}

/** Opens the ledger of one bench in a file of its own, made at first start. Throws LedgerError. */
export async function openLedger(options: LedgerOptions): Promise<Ledger> {
  const { file, now, bench, readOnly = false } = options;
  if (!readOnly) makeFolder(dirname(file));
  const store = openSqlite(file, now().toISOString(), readOnly);
  const keyFile = options.keyFile === undefined ? keyFileIn(dirname(file)) : options.keyFile;
  return ledgerOn(store, {
    now,
    bench,
    keyFile: readOnly ? null : keyFile,
    readOnly,
    newId: options.newId ?? randomUUID,
    monotonicMs: options.monotonicMs,
  });
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (cause) {
    throw new LedgerError(
      "ledger.folder.cannot-make",
      { folder, cause: (cause as Error).message },
      "read-only",
      cause,
    );
  }
}
