import { existsSync } from "node:fs";
import { message } from "../../calibration/message.ts";
import { appendTo, checkpointNow } from "./append.ts";
import { checkpointEvery, successorText } from "./checkpoint.ts";
import { grownFrom } from "./checkpoint-tree.ts";
import type { CustomerNames } from "./customer-names.ts";
import { previousKeyFile } from "./data-folder.ts";
import type { Entry } from "./entry.ts";
import { asLedgerError, LedgerError } from "./error.ts";
import type { BodyOf } from "./kinds.ts";
import type { EntryQuery, Ledger } from "./ledger.ts";
import { verifyList } from "./list-check.ts";
import { recordFileOf } from "./record-file.ts";
import { recordsOf, recordsOfOtherLots } from "./records.ts";
import { aboutSubject, aboutSubjects, entryOf, lastRow, nameOf } from "./rows.ts";
import { currentSchema, migrate, schemaVersion } from "./schema.ts";
import { type SigningKey, signingKey } from "./signing-key.ts";
import { checkAtStart } from "./start-check.ts";
import { countedBy, countedIn, readingsWithin } from "./statistics.ts";
import { vouches } from "./successor.ts";
import type { Store } from "./tables.ts";
import { Tiles } from "./tiles.ts";
import { verifyChain } from "./verification.ts";
import { cosignatureLine } from "./witness/cosignature-line.ts";
import { writingTo } from "./writing.ts";

export interface OnStore {
  now: () => Date;
  bench: string;
  keyFile: string | null;
  readOnly: boolean;
  newId: () => string;
  /** a clock that cannot be set, ms; without it a clock set forward is not noticed */
  monotonicMs?: (() => number) | undefined;
  /** id of the key that is trusted for this ledger from outside it; null when none is */
  pinned?: string | null;
  /** where nothing is written: the file of the key that may sign what is taken out; null when there is none */
  signWith?: string | null;
  /** names of customers that are kept apart; without them nothing is replaced */
  names?: CustomerNames | null;
}

/** The ledger over an opened store; the same for a file and for a shared database. */
export async function ledgerOn(
  store: Store,
  {
    now,
    bench,
    keyFile,
    readOnly,
    newId,
    monotonicMs,
    pinned = null,
    signWith = null,
    names = null,
  }: OnStore,
): Promise<Ledger> {
  const guarded = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (cause) {
      throw asLedgerError(cause, store.place);
    }
  };
  const at = () => now().toISOString();
  let key: SigningKey | undefined;
  let previous: SigningKey | undefined;
  try {
    key = keyFile === null ? undefined : signingKey(keyFile);
    const beside = keyFile === null ? undefined : previousKeyFile(keyFile);
    previous = beside !== undefined && existsSync(beside) ? signingKey(beside) : undefined;
    await guarded(() =>
      readOnly ? mustBeCurrent(store) : begin(store, { bench, at: at(), key, previous, pinned, id: newId() }),
    );
  } catch (cause) {
    await store.close();
    throw asLedgerError(cause, store.place);
  }
  const { db, place } = store;
  const tiles = new Tiles(store);
  const writing = writingTo(store, { now, bench, key, readOnly, newId, monotonicMs, names, guarded });

  return {
    get notStored() {
      return writing.notStored;
    },
    bench,
    place,
    names,
    found: store.found,
    key: key ?? null,
    append: writing.append,
    appendAll: writing.appendAll,
    appendReplicated: writing.appendReplicated,
    appendEach: writing.appendEach,
    entriesOf: (subject) => guarded(() => aboutSubject(db, subject)),
    entriesOfEach: (subjects) => guarded(() => aboutSubjects(db, subjects)),
    entries: (query = {}) => guarded(() => entriesIn(store, query)),
    entry: (id) =>
      guarded(async () => {
        const row = await db.selectFrom("entries").selectAll().where("id", "=", id).executeTakeFirst();
        return row ? entryOf(row) : null;
      }),
    head: () =>
      guarded(async () => {
        const row = await lastRow(db);
        return row ? { seq: row.seq, hash: row.hash } : null;
      }),
    records: (query = {}) => guarded(() => recordsOf(store, query, names)),
    recordsOfOtherLots: (lot, since, most) => guarded(() => recordsOfOtherLots(store, lot, since, most)),
    countedIn: (range) => guarded(() => countedIn(store, range)),
    countedBy: (range, grouping) => guarded(() => countedBy(store, range, grouping)),
    readingsWithin: (range, mostRecords) => guarded(() => readingsWithin(store, range, mostRecords)),
    verify: (options = {}, steps = {}) => guarded(() => verifyChain(store, options, steps)),
    verifyList: (steps = {}) => guarded(() => verifyList(store, steps)),
    recordFile: (subject) =>
      guarded(async () => {
        const signing = key ?? (signWith === null ? undefined : signingKey(signWith));
        if (!signing) throw new LedgerError("ledger.record.unsigned", { subject, place }, "refused");
        return recordFileOf({ store, tiles, key: signing, at: at() }, subject);
      }),
    name: () => guarded(() => nameOf(store)),
    consistencyProof: (old, size) => guarded(() => grownFrom(store, old, size)),
    inclusionProofs: (rows, size) => guarded(() => tiles.inclusionOf(rows, size)),
    cosign: (text) =>
      guarded(async () => key && cosignatureLine({ name: await nameOf(store), key }, text, now())).then(
        (line) => line ?? null,
      ),
    checkpoint: () =>
      guarded(async () => {
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

interface Beginning {
  bench: string;
  at: string;
  key: SigningKey | undefined;
  /** the key before it, where its file was put beside */
  previous: SigningKey | undefined;
  /** id of the key that is trusted from outside; null when none is */
  pinned: string | null;
  /** of the first entry, should this be a new ledger */
  id: string;
}

/** Schema, first entry and key of a ledger that is about to be written. */
async function begin(store: Store, beginning: Beginning): Promise<void> {
  const { bench, at, key, id: firstId } = beginning;
  await migrate(store, at);
  await checkAtStart(store, store.found.length > 0);
  if (!(await lastRow(store.db))) {
    const body = { program: "underhook", checkpointEvery: key ? checkpointEvery : 0 };
    await appendTo(
      store,
      { id: firstId, bench, at, kind: "ledger-opened", subject: `bench:${bench}`, body },
      key,
    );
  }
  if (!key) return;
  await introduce(store, { ...beginning, key });
  if (!(await isTrusted(store, key.keyId, beginning.pinned)))
    store.found.push(message("ledger.key.not-pinned", { key: `${key.keyId.slice(0, 16)}…` }));
  // A ledger from before there was a tree gets its first root at once, so that this start alone reads all of it.
  await checkpointNow(store, bench, at, key, { fresh: false });
}

/** Writes the key down where the ledger does not know it yet, and signs with it at once. */
async function introduce(
  store: Store,
  { bench, at, key, previous, pinned }: Beginning & { key: SigningKey },
): Promise<void> {
  const { keyId, publicKey } = key;
  const id = `signing-key-${keyId}`;
  const known = await store.db
    .selectFrom("entries")
    .select(["id", "seq"])
    .where("kind", "=", "signing-key")
    .execute();
  if (known.some((one) => one.id === id)) return;
  const vouchedBy = voucherFor(keyId, previous);
  if (known.length > 0 && vouchedBy === undefined && pinned === null)
    store.found.push(message("ledger.key.replaced", { key: `${keyId.slice(0, 16)}…` }));
  const body = { keyId, publicKey, ...(vouchedBy && { vouchedBy }) };
  await appendTo(store, { id, bench, at, subject: `key:${keyId}`, body, kind: "signing-key" }, key);
  await checkpointNow(store, bench, at, key);
}

/** True when no key is pinned, or this one is, or follows from it by successors that each was vouched for. */
async function isTrusted(store: Store, keyId: string, pinned: string | null): Promise<boolean> {
  if (pinned === null || pinned === keyId) return true;
  const rows = await store.db
    .selectFrom("entries")
    .select("body")
    .where("kind", "=", "signing-key")
    .orderBy("seq")
    .execute();
  const trusted = new Set([pinned]);
  const publicKeys = new Map<string, string>();
  for (const { body } of rows) {
    const key = JSON.parse(body) as BodyOf<"signing-key">;
    publicKeys.set(key.keyId, key.publicKey);
    if (vouches(key, publicKeys, (by) => trusted.has(by))) trusted.add(key.keyId);
  }
  return trusted.has(keyId);
}

/** The signature of the key before over its successor. */
function voucherFor(keyId: string, previous: SigningKey | undefined) {
  return previous && { keyId: previous.keyId, signature: previous.sign(successorText(keyId)) };
}

async function mustBeCurrent(store: Store): Promise<void> {
  if (store.dialect === "postgres") return;
  const tables = await store.db.introspection.getTables();
  if (!tables.some(({ name }) => name === "schema_versions"))
    throw new LedgerError("ledger.is-none", { place: store.place }, "missing");
  const version = await schemaVersion(store);
  if (version !== currentSchema)
    throw new LedgerError(
      "ledger.schema.older",
      { place: store.place, schema: version, needed: currentSchema },
      "damaged",
    );
}

async function entriesIn(store: Store, query: EntryQuery): Promise<Entry[]> {
  const { after, before, kind, own, limit, newestFirst = false } = query;
  let rows = store.db
    .selectFrom("entries")
    .selectAll()
    .orderBy("seq", newestFirst ? "desc" : "asc");
  if (after !== undefined) rows = rows.where("seq", ">", after);
  if (before !== undefined) rows = rows.where("seq", "<", before);
  if (kind !== undefined) rows = rows.where("kind", "in", [kind].flat());
  if (own) rows = rows.where("origin", "is", null);
  if (limit !== undefined) rows = rows.limit(limit);
  return (await rows.execute()).map(entryOf);
}
