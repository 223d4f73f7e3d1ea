import { message } from "../../calibration/message.ts";
import { canonicalJson } from "./canonical-json.ts";
import { type Checkpoint, checkpointEvery, signedText } from "./checkpoint.ts";
import { treeAt } from "./checkpoint-tree.ts";
import { chainHash, contentHash, type Entry, noHash, type Origin } from "./entry.ts";
import { LedgerError } from "./error.ts";
import { checkedBody, type Kind } from "./kinds.ts";
import { headText, noteSigned } from "./note.ts";
import { project } from "./projection.ts";
import { aboutSubject, entryOf, lastRow, nameOf } from "./rows.ts";
import type { SigningKey } from "./signing-key.ts";
import { Stale } from "./stale.ts";
import type { EntryRow, Store, Trx } from "./tables.ts";
import type { Tree } from "./tree.ts";

/** What is to be written, complete but for its place in the chain. */
export interface Draft {
  id: string;
  bench: string;
  at: string;
  kind: Kind;
  subject: string;
  body: unknown;
  origin?: Origin;
  /** by how much the clock went on more than the time that passed, since the entry this process wrote before, ms */
  leaptMs?: number;
}

/** The clock may be this much behind the last entry before it is written down as a jump, ms. */
const clockSlackMs = 2000;

/** Kinds that a ledger writes about itself; they bring no checkpoint or clock entry along. */
const ownKinds: Kind[] = ["checkpoint", "signing-key", "ledger-opened", "clock-jump"];

/**
 * Writes one entry in a transaction of its own and resolves when it is on the disk. The same id with the same
 * kind, subject and body again gives the entry that stands; the same id with anything else is refused.
 */
export async function appendTo(store: Store, draft: Draft, key: SigningKey | undefined): Promise<Entry> {
  const body = canonicalJson(checkedBody(draft.kind, draft.body));
  for (const name of ["id", "subject", "bench"] as const) mustBeAName(name, draft[name]);
  return inTransaction(store, (trx) => appendIn(trx, { draft, body, key }));
}

/**
 * Writes several entries about one subject in one transaction: all of them or none. `after` is how many entries about
 * the subject they rest on. Throws Stale when there are more by now, from this program or another one.
 */
export async function appendAllTo(
  store: Store,
  drafts: readonly Draft[],
  key: SigningKey | undefined,
  after: { subject: string; entries: number },
): Promise<Entry[]> {
  const checked = drafts.map((draft) => ({
    draft,
    body: canonicalJson(checkedBody(draft.kind, draft.body)),
    key,
  }));
  for (const { draft } of checked)
    for (const name of ["id", "subject", "bench"] as const) mustBeAName(name, draft[name]);
  return inTransaction(store, async (trx) => {
    const found = await countAbout(trx, after.subject);
    if (found !== after.entries) throw new Stale(after.subject, after.entries, found);
    const written: Entry[] = [];
    for (const one of checked) written.push(await appendIn(trx, one));
    return written;
  });
}

async function countAbout(trx: Trx, subject: string): Promise<number> {
  const { n } = await trx
    .selectFrom("entries")
    .select(({ fn }) => fn.countAll<number | string>().as("n"))
    .where("subject", "=", subject)
    .executeTakeFirstOrThrow();
  return Number(n);
}

async function appendIn(
  trx: Trx,
  { draft, body, key }: { draft: Draft; body: string; key: SigningKey | undefined },
): Promise<Entry> {
  const stood = await trx.selectFrom("entries").selectAll().where("id", "=", draft.id).executeTakeFirst();
  if (stood) return sameAgain(stood, draft, body);
  const own = draft.origin !== undefined || ownKinds.includes(draft.kind);
  if (!own) await noteClockJump(trx, draft);
  const row = await insert(trx, draft, body);
  await project(trx, row, (subject) => aboutSubject(trx, subject));
  if (key && !ownKinds.includes(draft.kind)) await checkpointIfDue(trx, draft, key);
  return row;
}

/**
 * Signs the chain as it stands, unless the last entry is its own checkpoint already; null in an empty ledger. With `fresh` false
 * it signs only where the last checkpoint, wherever it stands, has no tree yet.
 */
export async function checkpointNow(
  store: Store,
  bench: string,
  at: string,
  key: SigningKey,
  { fresh = true } = {},
): Promise<Entry | null> {
  return inTransaction(store, async (trx) => {
    const head = await lastRow(trx);
    if (!head) return null;
    const last = fresh ? head : ((await lastCheckpoint(trx)) ?? head);
    if (fresh ? isOwn(last, key) : isOwn(last)) return entryOf(last);
    return insertCheckpoint(trx, bench, at, key, head);
  });
}

export function inTransaction<T>(store: Store, work: (trx: Trx) => Promise<T>): Promise<T> {
  return store.db.transaction().execute(work);
}

/** Names are compared, indexed and hashed as they stand, in two databases: no control characters, no half characters. */
export function mustBeAName(what: string, value: string): void {
  if (/^[^\p{Cc}\p{Cs}]{1,200}$/u.test(value)) return;
  throw new LedgerError("ledger.entry.not-a-name", { what, value: JSON.stringify(value) }, "refused");
}

function sameAgain(stood: EntryRow, draft: Draft, body: string): Entry {
  if (stood.kind === draft.kind && stood.subject === draft.subject && stood.body === body)
    return entryOf(stood);
  throw standsOtherwise(draft, stood);
}

/** The refusal of an entry whose id stands with another content. */
export function standsOtherwise({ id }: Draft, { seq, kind, subject, at }: EntryRow): LedgerError {
  return new LedgerError("ledger.entry.stands", { id, row: seq, kind, subject, at }, "refused");
}

async function insert(trx: Trx, draft: Draft, body: string): Promise<Entry> {
  const head = await trx
    .selectFrom("entries")
    .select(["seq", "hash"])
    .orderBy("seq", "desc")
    .limit(1)
    .executeTakeFirst();
  const row = rowAfter(head, draft, body);
  await trx.insertInto("entries").values(row).execute();
  return entryOf(row);
}

/** The row that follows the last one of a chain. */
export function rowAfter(
  head: Pick<EntryRow, "seq" | "hash"> | undefined,
  { id, bench, at, kind, subject, origin }: Draft,
  body: string,
): EntryRow {
  const text = {
    ...{ seq: (head?.seq ?? 0) + 1, id, bench, at, kind, subject, body },
    origin: origin ? canonicalJson(origin) : null,
  };
  const prev_hash = head?.hash ?? noHash;
  return { ...text, prev_hash, hash: chainHash(contentHash(text), prev_hash) };
}

export async function noteClockJump(trx: Trx, draft: Draft): Promise<void> {
  const last = await trx
    .selectFrom("entries")
    .select(["at"])
    .where("bench", "=", draft.bench)
    .orderBy("seq", "desc")
    .limit(1)
    .executeTakeFirst();
  if (!last) return;
  const sinceMs = Date.parse(draft.at) - Date.parse(last.at);
  const leaptMs = draft.leaptMs ?? 0;
  if (sinceMs >= -clockSlackMs && leaptMs <= clockSlackMs) return;
  const back = sinceMs < -clockSlackMs;
  const body = {
    from: last.at,
    to: draft.at,
    byMs: back ? sinceMs : Math.round(leaptMs),
    message: message(back ? "ledger.clock.back" : "ledger.clock.forward"),
  };
  const jump: Draft = {
    ...draft,
    id: `${draft.id}-clock`,
    kind: "clock-jump",
    subject: `bench:${draft.bench}`,
    body,
  };
  await insert(trx, jump, canonicalJson(body));
}

async function checkpointIfDue(trx: Trx, { bench, at }: Draft, key: SigningKey): Promise<void> {
  const head = await lastRow(trx);
  const last = await lastCheckpoint(trx);
  if (head && head.seq - (last?.seq ?? 0) >= checkpointEvery)
    await insertCheckpoint(trx, bench, at, key, head);
}

/** True for a checkpoint over a tree, made here, by this key where one is given. */
function isOwn({ kind, origin, body }: EntryRow, key?: SigningKey): boolean {
  if (kind !== "checkpoint" || origin !== null) return false;
  const { note, keyId } = JSON.parse(body) as Checkpoint;
  return note !== undefined && (key === undefined || keyId === key.keyId);
}

/** The last checkpoint that was made here. */
export async function lastCheckpoint(trx: Trx): Promise<EntryRow | undefined> {
  return trx
    .selectFrom("entries")
    .selectAll()
    .where("kind", "=", "checkpoint")
    .where("origin", "is", null)
    .orderBy("seq", "desc")
    .limit(1)
    .executeTakeFirst();
}

async function insertCheckpoint(
  trx: Trx,
  bench: string,
  at: string,
  key: SigningKey,
  head: EntryRow,
): Promise<Entry> {
  const checkpoint = checkpointOf(head, {
    key,
    tree: await treeAt(trx, head.seq),
    name: await nameOf({ db: trx }),
  });
  const draft = checkpointDraft(checkpoint, { bench, at });
  return insert(trx, draft, canonicalJson(checkpoint));
}

/** A checkpoint over a chain that ends in this row; `tree` is that of its rows, `name` that of the ledger. */
export function checkpointOf(
  { seq, hash }: Pick<EntryRow, "seq" | "hash">,
  { key, tree, name: origin }: { key: SigningKey; tree: Tree; name: string },
): Checkpoint {
  const text = headText({ origin, size: seq, root: tree.root() });
  return {
    seq,
    hash,
    keyId: key.keyId,
    signature: key.sign(signedText(seq, hash)),
    note: noteSigned(text, { name: origin, raw: key.raw }, key.sign(text)),
    peaks: tree.peaks.map((peak) => peak.toString("hex")),
  };
}

export function checkpointDraft(body: Checkpoint, { bench, at }: Pick<Draft, "bench" | "at">): Draft {
  return { id: `checkpoint-${body.hash}`, bench, at, kind: "checkpoint", subject: `bench:${bench}`, body };
}
