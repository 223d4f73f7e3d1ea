import { type Message, message } from "../../calibration/message.ts";
import { jsonOf } from "./chain-fault.ts";
import { type Checkpoint, checkpointEvery, type OutsideHead, signedText } from "./checkpoint.ts";
import { chainHash, contentHash, contentText } from "./entry.ts";
import { kinds } from "./kinds.ts";
import { logName, rawKeyOf, readNote, signedBy } from "./note.ts";
import type { RetiredRun } from "./shared/retired.ts";
import { keyIdOf, signatureHolds } from "./signing-key.ts";
import { vouches } from "./successor.ts";
import type { EntryRow } from "./tables.ts";
import { leafHash, Tree } from "./tree.ts";

/** What is known from outside the ledger. */
export interface Trust {
  /**
   * id of the key that is trusted: given, pinned, or printed on a report. Every checkpoint after its first must be its
   * own or of a successor it vouched for, and none may be missing up to the end.
   */
  keyId?: string;
  /** checkpoints kept elsewhere; each must fit the chain */
  checkpoints?: readonly OutsideHead[];
}

/** How far the signatures reach. */
export interface Signed {
  checkpoints: number;
  upTo: number;
  by: string[];
  /** the last row that any key of the ledger vouches for */
  byAnyUpTo: number;
}

interface Fault {
  row: number;
  message: Message;
}

/** A clock entry and the entry it announces go in together, before the checkpoint that is due. */
const slack = 2;

/** Follows keys, checkpoints and the tree along a chain whose hashes are good. */
export class SignatureWalk {
  readonly signed: Signed = { checkpoints: 0, upTo: 0, by: [], byAnyUpTo: 0 };
  readonly #keyId: string | undefined;
  readonly #trusted: Set<string> | undefined;
  readonly #retired = new Map<string, number>();
  readonly #keys = new Map<string, string>();
  readonly #outside: readonly OutsideHead[];
  readonly #shared: boolean;
  #tree = new Tree();
  #name = "";
  #every = 0;

  /** `shared`: several benches sign one chain, each with its own key, so that the trusted key need not sign all of it. */
  constructor({ keyId, checkpoints = [] }: Trust, shared: boolean) {
    this.#keyId = keyId;
    this.#trusted = keyId === undefined ? undefined : new Set([keyId]);
    this.#outside = checkpoints;
    this.#shared = shared;
  }

  /** Takes the next row, with the hash of the one before; what is wrong with it, or null. */
  step(row: EntryRow, hashBefore: string): Fault | null {
    const sentence = this.#ofRow(row, hashBefore);
    if (sentence !== null) return { row: row.seq, message: sentence };
    if (row.seq === 1) this.#name = logName(row.hash);
    this.#tree.add(leafHash(contentText(row)));
    for (const head of this.#outside)
      if (head.seq === row.seq && !this.#fits(head, row.hash))
        return { row: row.seq, message: message("ledger.fault.kept-checkpoint", { row: row.seq }) };
    return null;
  }

  /**
   * Takes a row that stays of a run whose other rows were retired: it must have the hash of what it says, and a checkpoint
   * the signature over its own tree head.
   */
  staying(row: EntryRow): Fault | null {
    const fault = (wrong: Message) => ({ row: row.seq, message: wrong });
    if (chainHash(contentHash(row), row.prev_hash) !== row.hash)
      return fault(message("ledger.fault.changed", { row: row.seq, kind: row.kind, at: row.at }));
    if (row.seq === 1) this.#name = logName(row.hash);
    const own = row.origin === null;
    if (own && row.kind === "signing-key") {
      const wrong = this.#key(row);
      return wrong && fault(wrong);
    }
    if (!own || row.kind !== "checkpoint") return null;
    const { seq, peaks } = jsonOf(row.body) as Checkpoint;
    if (peaks) this.#tree = treeOf(seq, peaks) ?? this.#tree;
    const wrong = this.#checkpoint(row, row.prev_hash);
    if (wrong !== null) return fault(wrong);
    return this.#outside.some((head) => head.seq === seq && !this.#fits(head, row.prev_hash))
      ? fault(message("ledger.fault.kept-checkpoint", { row: seq }))
      : null;
  }

  /** Goes over rows that were retired; false where the tree at their end is none. What follows shows whether it was the right one. */
  jump({ upto, peaks }: RetiredRun): boolean {
    const tree = treeOf(upto, peaks.split(" "));
    if (tree) this.#tree = tree;
    return tree !== undefined;
  }

  /** What is wrong once there is no further row. */
  end(): Fault | null {
    const last = this.#tree.size;
    for (const { seq } of this.#outside)
      if (seq > last)
        return { row: last + 1, message: message("ledger.fault.cut-short", { last, checkpoint: seq }) };
    if (this.#keyId === undefined || this.signed.upTo > 0) return null;
    return { row: 1, message: message("ledger.fault.key-never-signed", { key: short(this.#keyId) }) };
  }

  #fits(head: OutsideHead, hash: string): boolean {
    if (head.hash !== undefined) return head.hash === hash && this.#wasSigned(head);
    return head.origin === this.#name && head.root === this.#tree.root().toString("base64");
  }

  /** A line kept elsewhere may be where the trusted key is known from: then its own signature must hold too. */
  #wasSigned({ seq, hash = "", signed }: OutsideHead): boolean {
    const publicKey = signed && this.#keys.get(signed.keyId);
    if (signed === undefined) return true;
    return publicKey !== undefined && signatureHolds(signedText(seq, hash), signed.signature, publicKey);
  }

  #ofRow(row: EntryRow, hashBefore: string): Message | null {
    if (row.origin === null && row.kind === "signing-key") return this.#key(row);
    if (row.origin === null && row.kind === "checkpoint") return this.#checkpoint(row, hashBefore);
    if (row.origin === null && row.kind === "ledger-opened") {
      const read = kinds["ledger-opened"].safeParse(jsonOf(row.body));
      if (!read.success) return message("ledger.fault.unreadable", { row: row.seq });
      this.#every = read.data.checkpointEvery;
    }
    return this.#overdue(row);
  }

  /** With a trusted key, what the ledger says of itself does not count: this program signs so often once it began. */
  #overdue({ seq, origin, kind }: EntryRow): Message | null {
    const alone = this.#trusted !== undefined && !this.#shared;
    const upTo = this.#shared ? this.signed.byAnyUpTo : this.signed.upTo;
    const every = alone ? (upTo === 0 ? 0 : checkpointEvery) : this.#every;
    // Keys and checkpoints that are handed over bring no checkpoint along.
    const passed = this.#shared && origin !== null && (kind === "checkpoint" || kind === "signing-key");
    if (every === 0 || passed || seq - upTo <= every + slack) return null;
    return message("ledger.fault.checkpoints-removed", { from: upTo + 1, to: seq, every });
  }

  #key(row: EntryRow): Message | null {
    const read = kinds["signing-key"].safeParse(jsonOf(row.body));
    if (!read.success) return message("ledger.fault.unreadable", { row: row.seq });
    const { keyId, publicKey, vouchedBy } = read.data;
    const vouched = vouches(read.data, this.#keys, (by) => this.#trusted?.has(by) ?? true);
    if (keyIdOf(publicKey) !== keyId) return message("ledger.fault.key-id", { row: row.seq });
    this.#keys.set(keyId, publicKey);
    if (vouchedBy && vouched) {
      this.#trusted?.add(keyId);
      this.#retired.set(vouchedBy.keyId, row.seq);
    }
    return null;
  }

  #checkpoint(row: EntryRow, hashBefore: string): Message | null {
    const read = kinds.checkpoint.safeParse(jsonOf(row.body));
    if (!read.success) return message("ledger.fault.unreadable", { row: row.seq });
    const checkpoint = read.data;
    const { seq, hash, keyId, signature } = checkpoint;
    const publicKey = this.#keys.get(keyId);
    if (publicKey === undefined) return message("ledger.fault.unknown-key", { row: row.seq });
    if (seq !== row.seq - 1 || hash !== hashBefore)
      return message("ledger.fault.checkpoint-hash", { row: row.seq, checkpoint: seq });
    if (!signatureHolds(signedText(seq, hash), signature, publicKey))
      return message("ledger.fault.signature", { row: row.seq });
    if (!this.#noteHolds(checkpoint, publicKey)) return message("ledger.fault.note", { row: row.seq });
    const since = this.#retired.get(keyId);
    if (since !== undefined && !this.#shared)
      return message("ledger.fault.retired-key", { row: row.seq, key: short(keyId), since });
    if (this.#trusted && !this.#trusted.has(keyId) && this.signed.upTo > 0 && !this.#shared)
      return message("ledger.fault.untrusted-key", { row: row.seq, key: short(keyId) });
    this.#count(seq, keyId);
    return null;
  }

  /** Checkpoints from before there was a tree carry no note. */
  #noteHolds({ seq, note: written, peaks }: Checkpoint, publicKey: string): boolean {
    if (written === undefined) return peaks === undefined;
    const note = readNote(written);
    const raw = rawKeyOf(publicKey);
    if (!note || !raw || note.head.origin !== this.#name || note.head.size !== seq) return false;
    const own = this.#tree.peaks.map((peak) => peak.toString("hex"));
    return (
      note.head.root.equals(this.#tree.root()) &&
      (peaks === undefined || peaks.join() === own.join()) &&
      signedBy(note, { name: this.#name, raw }) === true
    );
  }

  #count(seq: number, keyId: string): void {
    this.signed.checkpoints += 1;
    this.signed.byAnyUpTo = seq;
    if (this.#trusted && !this.#trusted.has(keyId)) return;
    this.signed.upTo = seq;
    if (!this.signed.by.includes(keyId)) this.signed.by.push(keyId);
  }
}

function treeOf(size: number, peaks: readonly string[]): Tree | undefined {
  try {
    return new Tree(
      size,
      peaks.map((peak) => Buffer.from(peak, "hex")),
    );
  } catch {
    return undefined;
  }
}

/** The beginning of a key id, enough to compare it by eye. */
function short(keyId: string): string {
  return `${keyId.slice(0, 16)}…`;
}
