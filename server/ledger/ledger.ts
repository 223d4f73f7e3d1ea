import { randomUUID } from "node:crypto";
import { mkdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { aboutSubject, appendTo, checkpointNow, entryOf, lastRow } from "./append.ts";
import { type Checkpoint, checkpointEvery } from "./checkpoint.ts";
import type { Entry, EntryOf, Origin } from "./entry.ts";
import type { BodyOf, Kind } from "./kinds.ts";
import { type RecordPage, type RecordQuery, recordsOf } from "./records.ts";
import { currentSchema, migrate, schemaVersion } from "./schema.ts";
import { type SigningKey, signingKey } from "./signing-key.ts";
import { openSqlite } from "./sqlite.ts";
import { checkAtStart } from "./start-check.ts";
import type { Store } from "./tables.ts";
import { asTrouble, LedgerTrouble } from "./trouble.ts";
import { type Verification, type VerifyOptions, verifyChain } from "./verification.ts";

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
  /** sentences for the page about what was found on opening; empty when all was well */
  readonly found: readonly string[];
  /** id and public key of the signing key; null when the ledger is not signed from here */
  readonly key: Pick<SigningKey, "keyId" | "publicKey"> | null;
  /**
   * Writes an entry and resolves when it is on the disk. `key` makes it idempotent: the same key and content again
   * gives the entry that stands. Throws LedgerTrouble; then nothing was stored.
   */
  append<K extends Kind>(
    kind: K,
    subject: string,
    body: BodyOf<K>,
    options?: AppendOptions,
  ): Promise<EntryOf<K>>;
  /** everything about one subject, oldest first */
  entriesOf(subject: string): Promise<Entry[]>;
  entries(query?: EntryQuery): Promise<Entry[]>;
  entry(id: string): Promise<Entry | null>;
  /** place and hash of the last entry; null in an empty ledger */
  head(): Promise<{ seq: number; hash: string } | null>;
  /** finished measurements, newest first */
  records(query?: RecordQuery): Promise<RecordPage>;
  verify(options?: VerifyOptions): Promise<Verification>;
  /** signs the chain as it stands; null when there is no key or no entry */
  checkpoint(): Promise<Checkpoint | null>;
  /** signs what is not signed yet and lets go of the file */
  close(): Promise<void>;
}

export interface AppendOptions {
  /** idempotency key; becomes the id of the entry */
  key?: string;
  /** for entries handed over from another ledger: who saw it, when, and where it stood there */
  handedOver?: { bench: string; at: string; origin: Origin };
}

/** Opens the ledger of one bench in a file of its own, made at first start. Throws LedgerTrouble. */
export async function openLedger(options: LedgerOptions): Promise<Ledger> {
  const { file, now, bench, readOnly = false } = options;
  if (!readOnly) makeFolder(dirname(file));
  const store = openSqlite(file, now().toISOString(), readOnly);
  const keyFile = options.keyFile === undefined ? join(dirname(file), "signing-key.pem") : options.keyFile;
  return ledgerOn(store, {
    now,
    bench,
    keyFile: readOnly ? null : keyFile,
    readOnly,
    newId: options.newId ?? randomUUID,
  });
}

interface OnStore {
  now: () => Date;
  bench: string;
  keyFile: string | null;
  readOnly: boolean;
  newId: () => string;
}

/** The ledger over an opened store; the same for a file and for a shared database. */
export async function ledgerOn(
  store: Store,
  { now, bench, keyFile, readOnly, newId }: OnStore,
): Promise<Ledger> {
  const told = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (cause) {
      throw asTrouble(cause, store.place);
    }
  };
  const at = () => now().toISOString();
  let key: SigningKey | undefined;
  try {
    key = keyFile === null ? undefined : signingKey(keyFile);
    await told(() => (readOnly ? mustBeCurrent(store) : begin(store, bench, at(), key)));
  } catch (cause) {
    await store.close();
    throw cause;
  }
  const { db, place } = store;

  return {
    bench,
    place,
    found: store.found,
    key: key ? { keyId: key.keyId, publicKey: key.publicKey } : null,
    append: (kind, subject, body, { key: id = newId(), handedOver } = {}) =>
      told(async () => {
        if (readOnly)
          throw new LedgerTrouble(
            "read-only",
            `The ledger ${place} was opened for reading; nothing was stored.`,
          );
        const when = handedOver ?? { bench, at: at() };
        const entry = await appendTo(store, { id, kind, subject, body, ...when }, key);
        return entry as EntryOf<typeof kind>;
      }),
    entriesOf: (subject) => told(() => aboutSubject(db, subject)),
    entries: (query = {}) => told(() => entriesIn(store, query)),
    entry: (id) =>
      told(async () => {
        const row = await db.selectFrom("entries").selectAll().where("id", "=", id).executeTakeFirst();
        return row ? entryOf(row) : null;
      }),
    head: () =>
      told(async () => {
        const row = await lastRow(db);
        return row ? { seq: row.seq, hash: row.hash } : null;
      }),
    records: (query = {}) => told(() => recordsOf(store, query)),
    verify: (options = {}) => told(() => verifyChain(store, options)),
    checkpoint: () =>
      told(async () => {
        const signed = key ? await checkpointNow(store, bench, at(), key) : null;
        return signed?.kind === "checkpoint" ? signed.body : null;
      }),
    async close() {
      // The last entries get their signature too; a disk that refuses it must not keep the bench from closing.
      if (key) await checkpointNow(store, bench, at(), key).catch(() => null);
      await store.close();
    },
  };
}

/** Schema, first entry and key of a ledger that is about to be written. */
async function begin(store: Store, bench: string, at: string, key: SigningKey | undefined): Promise<void> {
  await migrate(store, at);
  await checkAtStart(store, store.found.length > 0);
  const subject = `bench:${bench}`;
  if (!(await lastRow(store.db))) {
    const body = { program: "underhook", checkpointEvery: key ? checkpointEvery : 0 };
    await appendTo(store, { id: "ledger-opened", bench, at, kind: "ledger-opened", subject, body }, key);
  }
  if (!key) return;
  const { keyId, publicKey } = key;
  const id = `signing-key-${keyId}`;
  await appendTo(
    store,
    { id, bench, at, kind: "signing-key", subject: `key:${keyId}`, body: { keyId, publicKey } },
    key,
  );
}

async function mustBeCurrent(store: Store): Promise<void> {
  const version = await schemaVersion(store);
  if (version !== currentSchema)
    throw new LedgerTrouble(
      "damaged",
      `The ledger ${store.place} has schema ${version}, and ${currentSchema} is needed for reading. Start the bench once on it: that brings it up to date.`,
    );
}

async function entriesIn(store: Store, query: EntryQuery): Promise<Entry[]> {
  const { after, before, kind, limit, newestFirst = false } = query;
  let rows = store.db
    .selectFrom("entries")
    .selectAll()
    .orderBy("seq", newestFirst ? "desc" : "asc");
  if (after !== undefined) rows = rows.where("seq", ">", after);
  if (before !== undefined) rows = rows.where("seq", "<", before);
  if (kind !== undefined) rows = rows.where("kind", "in", [kind].flat());
  if (limit !== undefined) rows = rows.limit(limit);
  return (await rows.execute()).map(entryOf);
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (cause) {
    throw new LedgerTrouble(
      "read-only",
      `The data folder ${folder} cannot be made: ${(cause as Error).message}. Give this user the right to write there, or set UNDERHOOK_DATA to another folder.`,
      cause,
    );
  }
}
