import { type Message, message } from "../../calibration/message.ts";
import { canonicalJson } from "./canonical-json.ts";
import { type Checkpoint, checkpointEvery, signedText, successorText } from "./checkpoint.ts";
import { chainHash, contentHash, noHash, type Origin } from "./entry.ts";
import type { BodyOf } from "./kinds.ts";
import { keyIdOf, signatureHolds } from "./signing-key.ts";
import type { EntryRow, Store } from "./tables.ts";

export interface VerifyOptions {
  /**
   * id of the key that is trusted: the one in the data folder, or one printed on a report. Every checkpoint after its
   * first must be its own or of a successor it vouched for, and none may be missing up to the end.
   */
  keyId?: string;
  /** checkpoints kept elsewhere; each must fit the chain */
  checkpoints?: Checkpoint[];
}

export type Verification =
  | {
      good: true;
      /** entries in the chain, all good */
      entries: number;
      hash: string;
      /** how many checkpoints were checked, and the last row one of them vouches for */
      checkpoints: number;
      signedUpTo: number;
    }
  | {
      good: false;
      /** entries before the first bad row */
      entries: number;
      /** the first row that is wrong */
      row: number;
      says: Message;
    };

/** Rows read at a time: enough to be fast, few enough to keep memory low. */
const pageRows = 2000;

/**
 * Walks the whole chain: every row's hash, its link to the row before, the numbering, what was handed over, and
 * every signature. Names the first row that was changed, removed, inserted or put elsewhere.
 */
export async function verifyChain(store: Store, options: VerifyOptions): Promise<Verification> {
  const walk = newWalk(options, store.dialect === "postgres");
  for (let after = 0; ; ) {
    const rows = await store.db
      .selectFrom("entries")
      .selectAll()
      .where("seq", ">", after)
      .orderBy("seq")
      .limit(pageRows)
      .execute();
    for (const row of rows) {
      const wrong = walk.step(row);
      if (wrong !== null) return { good: false, entries: walk.entries, row: row.seq, says: wrong };
    }
    const last = rows.at(-1);
    if (!last) break;
    after = last.seq;
  }
  return walk.end();
}

/** Checks only the last rows, for a quick look at start; null when they are good, else what is wrong. */
export async function verifyTail(store: Store, count: number): Promise<Message | null> {
  const rows = await store.db.selectFrom("entries").selectAll().orderBy("seq", "desc").limit(count).execute();
  let [before, hash] = [(rows.at(-1)?.seq ?? 1) - 1, rows.at(-1)?.prev_hash ?? noHash];
  for (const row of rows.reverse()) {
    const wrong = chainFault(row, before, hash) ?? originFault(row);
    if (wrong !== null) return wrong;
    before = row.seq;
    hash = row.hash;
  }
  return null;
}

/** `shared`: several benches sign one chain, each with its own key, so that the trusted key need not sign all of it. */
function newWalk({ keyId, checkpoints: kept = [] }: VerifyOptions, shared: boolean) {
  const keys = new Map<string, string>();
  const trusted = keyId === undefined ? undefined : new Set([keyId]);
  const keptAt = new Map(kept.map((checkpoint) => [checkpoint.seq, checkpoint]));
  let entries = 0;
  let hash = noHash;
  let checkpoints = 0;
  let lastSigned = 0;
  let signedUpTo = 0;
  let every = 0;

  const step = (row: EntryRow): Message | null => {
    const wrong = chainFault(row, entries, hash) ?? originFault(row) ?? signatureFault(row);
    if (wrong !== null) return wrong;
    entries = row.seq;
    hash = row.hash;
    const outside = keptAt.get(row.seq);
    if (outside && outside.hash !== row.hash)
      return message("ledger.fault.kept-checkpoint", { row: row.seq });
    return null;
  };

  const signatureFault = (row: EntryRow): Message | null => {
    if (row.origin !== null) return null;
    if (row.kind === "ledger-opened")
      every = (JSON.parse(row.body) as BodyOf<"ledger-opened">).checkpointEvery;
    if (row.kind === "signing-key") {
      const key = JSON.parse(row.body) as BodyOf<"signing-key">;
      if (keyIdOf(key.publicKey) !== key.keyId) return message("ledger.fault.key-id", { row: row.seq });
      keys.set(key.keyId, key.publicKey);
      if (isVouchedFor(key)) trusted?.add(key.keyId);
      return null;
    }
    if (row.kind === "checkpoint") return checkpointFault(row, JSON.parse(row.body) as Checkpoint);
    // A clock entry and the entry it announces go in together, before the checkpoint that is due.
    const due = trusted && !shared ? (signedUpTo === 0 ? 0 : checkpointEvery) : every;
    const signed = shared ? lastSigned : signedUpTo;
    if (due > 0 && row.seq - signed > due + 2)
      return message("ledger.fault.checkpoints-removed", { from: signed + 1, to: row.seq, every: due });
    return null;
  };

  /** A successor counts when a trusted key signed its id. */
  const isVouchedFor = ({ keyId: next, vouchedBy }: BodyOf<"signing-key">): boolean => {
    const publicKey = vouchedBy && trusted?.has(vouchedBy.keyId) ? keys.get(vouchedBy.keyId) : undefined;
    return (
      vouchedBy !== undefined &&
      publicKey !== undefined &&
      signatureHolds(successorText(next), vouchedBy.signature, publicKey)
    );
  };

  const checkpointFault = (row: EntryRow, checkpoint: Checkpoint): Message | null => {
    const publicKey = keys.get(checkpoint.keyId);
    if (publicKey === undefined) return message("ledger.fault.unknown-key", { row: row.seq });
    if (checkpoint.seq !== entries || checkpoint.hash !== hash)
      return message("ledger.fault.checkpoint-hash", { row: row.seq, checkpoint: checkpoint.seq });
    if (!signatureHolds(signedText(checkpoint.seq, checkpoint.hash), checkpoint.signature, publicKey))
      return message("ledger.fault.signature", { row: row.seq });
    checkpoints += 1;
    lastSigned = checkpoint.seq;
    if (trusted === undefined || trusted.has(checkpoint.keyId)) signedUpTo = checkpoint.seq;
    else if (signedUpTo > 0 && !shared)
      return message("ledger.fault.untrusted-key", {
        row: row.seq,
        key: `${checkpoint.keyId.slice(0, 16)}…`,
      });
    return null;
  };

  const end = (): Verification => {
    const bad = (says: Message): Verification => ({ good: false, entries, row: entries + 1, says });
    for (const checkpoint of kept)
      if (checkpoint.seq > entries)
        return bad(message("ledger.fault.cut-short", { last: entries, checkpoint: checkpoint.seq }));
    if (keyId !== undefined && entries > 0 && signedUpTo === 0)
      return bad(message("ledger.fault.key-never-signed", { key: `${keyId.slice(0, 16)}…` }));
    // The bench that writes at this moment signs within so many rows.
    if (trusted && !shared && entries - signedUpTo > 2 * checkpointEvery)
      return bad(
        message("ledger.fault.checkpoints-removed", {
          from: signedUpTo + 1,
          to: entries,
          every: checkpointEvery,
        }),
      );
    return { good: true, entries, hash, checkpoints, signedUpTo };
  };

  return {
    step,
    end,
    get entries() {
      return entries;
    },
  };
}

function chainFault(row: EntryRow, before: number, hashBefore: string): Message | null {
  const whole = chainHash(contentHash(row), row.prev_hash) === row.hash;
  if (row.seq !== before + 1) {
    const [from, to] = [before + 1, row.seq - 1];
    return message("ledger.fault.missing", { from, to, count: to - from + 1, before, found: row.seq });
  }
  if (!whole) return message("ledger.fault.changed", { row: row.seq, kind: row.kind, at: row.at });
  if (row.prev_hash !== hashBefore)
    return message("ledger.fault.does-not-follow", { row: row.seq, kind: row.kind, at: row.at, before });
  return null;
}

/** What another bench handed over must still have the hash it had there. */
function originFault(row: EntryRow): Message | null {
  if (row.origin === null) return null;
  const origin = JSON.parse(row.origin) as Origin;
  if (canonicalJson(origin) !== row.origin) return message("ledger.fault.origin-form", { row: row.seq });
  const there = chainHash(contentHash({ ...row, seq: origin.seq, origin: null }), origin.prevHash);
  return there === origin.hash
    ? null
    : message("ledger.fault.origin-hash", { row: row.seq, bench: row.bench });
}
