import { z } from "zod";
import { type Message, message } from "../../calibration/message.ts";
import { canonicalJson } from "./canonical-json.ts";
import { signedText } from "./checkpoint.ts";
import { chainHash, contentHash, type Entry } from "./entry.ts";
import { LedgerError } from "./error.ts";
import type { Ledger } from "./ledger.ts";
import { keyIdOf, signatureHolds } from "./signing-key.ts";

const hex64 = z.string().regex(/^[0-9a-f]{64}$/);

/**
 * One record as a file of its own: every entry about it, and for each the way up the chain to a signed checkpoint.
 * Of the neighbours' entries on that way only hashes are given, so nothing of other customers is handed out.
 */
export const recordFile = z.strictObject({
  format: z.literal("underhook record, version 1"),
  subject: z.string(),
  publicKey: z.string(),
  entries: z.array(z.custom<Entry>(isEntry, { error: "no entry of a ledger" })),
  /** stretches of the chain, each ending in the row a checkpoint vouches for */
  proofs: z.array(
    z.strictObject({
      firstSeq: z.number().int().min(1),
      prevHash: hex64,
      /** content hash of every row of the stretch */
      contents: z.array(hex64),
      checkpoint: z.strictObject({ seq: z.number().int(), hash: hex64, keyId: hex64, signature: z.string() }),
    }),
  ),
});
/** Only what the check below touches; everything else is vouched for by the hash. */
function isEntry(value: unknown): boolean {
  const names = ["id", "bench", "at", "kind", "subject", "hash", "prevHash"];
  const entry = value as Record<string, unknown> | null;
  if (typeof entry !== "object" || entry === null || !Number.isSafeInteger(entry.seq)) return false;
  return names.every((name) => typeof entry[name] === "string") && typeof entry.body === "object";
}

export type RecordFile = z.infer<typeof recordFile>;

/** Makes the file for one subject; signs the chain first. Throws LedgerError when there is no such record or no key. */
export async function recordFileOf(ledger: Ledger, subject: string): Promise<RecordFile> {
  const entries = await ledger.entriesOf(subject);
  if (entries.length === 0)
    throw new LedgerError("ledger.record.none", { subject, place: ledger.place }, "missing");
  await ledger.checkpoint();
  const proofs: RecordFile["proofs"] = [];
  for (const { seq, prevHash } of entries) {
    const covered = proofs.at(-1);
    if (covered && seq <= covered.checkpoint.seq) continue;
    const stretch = await ledger.entries({ after: seq - 1, limit: 1000 });
    const end = stretch.find((entry) => entry.kind === "checkpoint" && !entry.origin);
    if (end?.kind !== "checkpoint")
      throw new LedgerError("ledger.record.unsigned", { row: seq, place: ledger.place }, "refused");
    const contents = stretch.filter((entry) => entry.seq < end.seq).map(contentOf);
    proofs.push({ firstSeq: seq, prevHash, contents, checkpoint: end.body });
  }
  const keyId = proofs[0]?.checkpoint.keyId ?? "";
  const key = await ledger.entry(`signing-key-${keyId}`);
  if (key?.kind !== "signing-key" || proofs.some((proof) => proof.checkpoint.keyId !== keyId))
    throw new LedgerError("ledger.record.many-keys", { subject }, "refused");
  return { format: "underhook record, version 1", subject, publicKey: key.body.publicKey, entries, proofs };
}

export type RecordCheck = { good: true; entries: number; keyId: string } | { good: false; says: Message };

/** Checks a record file by itself: every entry, its way up the chain, every signature. Needs no ledger. */
export function checkRecordFile(file: RecordFile): RecordCheck {
  const keyId = keyIdOf(file.publicKey);
  const proven = new Map<number, { content: string; hash: string }>();
  for (const { firstSeq, prevHash, contents, checkpoint } of file.proofs) {
    let hash = prevHash;
    for (const [index, content] of contents.entries()) {
      hash = chainHash(content, hash);
      proven.set(firstSeq + index, { content, hash });
    }
    if (hash !== checkpoint.hash || checkpoint.seq !== firstSeq + contents.length - 1)
      return bad(message("ledger.fault.no-way", { row: firstSeq, checkpoint: checkpoint.seq }));
    if (
      checkpoint.keyId !== keyId ||
      !signatureHolds(signedText(checkpoint.seq, checkpoint.hash), checkpoint.signature, file.publicKey)
    )
      return bad(message("ledger.fault.signature", { row: checkpoint.seq }));
  }
  for (const entry of file.entries) {
    const there = proven.get(entry.seq);
    if (there === undefined)
      return bad(message("ledger.fault.no-proof", { row: entry.seq, kind: entry.kind }));
    if (entry.subject !== file.subject)
      return bad(
        message("ledger.fault.other-subject", { row: entry.seq, kind: entry.kind, subject: entry.subject }),
      );
    if (there.content !== contentOf(entry) || there.hash !== entry.hash)
      return bad(message("ledger.fault.changed", { row: entry.seq, kind: entry.kind, at: entry.at }));
  }
  if (file.entries.length === 0) return bad(message("ledger.fault.no-entry"));
  return { good: true, entries: file.entries.length, keyId };
}

function bad(says: Message): RecordCheck {
  return { good: false, says };
}

function contentOf(entry: Entry): string {
  const { body, origin } = entry;
  return contentHash({ ...entry, body: canonicalJson(body), origin: origin ? canonicalJson(origin) : null });
}
