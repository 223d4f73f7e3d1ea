import { createHash, generateKeyPairSync, sign } from "node:crypto";
import { canonicalJson } from "../../../server/ledger/canonical-json.ts";
import { chainHash, contentHash } from "../../../server/ledger/entry.ts";
import type { EntryRow } from "../../../server/ledger/tables.ts";

/** A key of somebody who is not the bench, made with the library of the platform alone. */
export function strangersKey() {
  const { privateKey, publicKey } = generateKeyPairSync("ed25519");
  const der = publicKey.export({ type: "spki", format: "der" });
  return {
    keyId: createHash("sha256").update(der).digest("hex"),
    publicKey: der.toString("base64"),
    raw: der.subarray(-32),
    sign: (text: string) => sign(null, Buffer.from(text), privateKey).toString("base64"),
  };
}
export type Signer = Omit<ReturnType<typeof strangersKey>, "raw"> & { raw: Buffer };

export const isCheckpoint = ({ kind }: EntryRow) => kind === "checkpoint";

/** A row with another body, written as the ledger writes it. */
export function saying(row: EntryRow, change: (body: Record<string, unknown>) => object): EntryRow {
  return { ...row, body: canonicalJson(change(JSON.parse(row.body))) };
}

/** A checkpoint of the row before, signed with a key, as programs wrote it before there was a tree. */
export function signedCheckpoint(row: EntryRow, seq: number, hash: string, key: Signer): EntryRow {
  const signature = key.sign(`underhook checkpoint\n${seq}\n${hash}\n`);
  return { ...row, body: canonicalJson({ seq, hash, keyId: key.keyId, signature }) };
}

/** An entry that introduces a key. */
export function introduction(like: EntryRow, key: Signer, vouchedBy?: object): EntryRow {
  const { keyId, publicKey } = key;
  const body = canonicalJson({ keyId, publicKey, ...(vouchedBy && { vouchedBy }) });
  return { ...like, id: `signing-key-${keyId}-${Math.random()}`, subject: `key:${keyId}`, body };
}

/** Numbers and hashes every row again from a row on; `signs` makes the checkpoints fit, where it may. */
export function rehashed(
  rows: EntryRow[],
  from = 1,
  signs: (row: EntryRow, seq: number, hash: string) => EntryRow = (row) => row,
): EntryRow[] {
  let before = "0".repeat(64);
  return rows.map((row, index) => {
    const seq = index + 1;
    if (seq < from) {
      before = row.hash;
      return row;
    }
    const signed = row.kind === "checkpoint" ? signs(row, seq - 1, before) : row;
    const next = { ...signed, seq, prev_hash: before };
    next.hash = chainHash(contentHash(next), before);
    before = next.hash;
    return next;
  });
}

/** Rows of notes that were never written by the bench, to be hashed on. */
export function invented(like: EntryRow, count: number): EntryRow[] {
  return Array.from({ length: count }, (_, n) => ({
    ...like,
    id: `invented-${n}`,
    kind: "note",
    subject: "piece:1",
    body: canonicalJson({ text: `note ${n}` }),
  }));
}
