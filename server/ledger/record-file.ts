import { z } from "zod";
import { type Message, message } from "../../calibration/message.ts";
import { canonicalJson } from "./canonical-json.ts";
import { treeAt } from "./checkpoint-tree.ts";
import { chainHash, contentHash, contentText, type Entry, type EntryText } from "./entry.ts";
import { LedgerError } from "./error.ts";
import {
  headText,
  noteSigned,
  readNote,
  readSigned,
  readVerifierKey,
  signedBy,
  verifierKey,
} from "./note.ts";
import { type RecordState, recordState, recordStates } from "./record-state.ts";
import { aboutSubject, lastRow, nameOf } from "./rows.ts";
import { keyIdOfRaw, type SigningKey } from "./signing-key.ts";
import { readStatement, type SubjectStatement, statementText } from "./subject-statement.ts";
import type { Store } from "./tables.ts";
import type { Tiles } from "./tiles.ts";
import { leafHash, rootByInclusion } from "./tree.ts";

const base64 = z.string().regex(/^[A-Za-z0-9+/]{43}=$/);

/** True for a file of the format before this one, which did not say what it proves. */
export const isOldRecordFile = (given: unknown): boolean =>
  Object(given).format === "underhook record, version 1";

/**
 * One record, lot or other subject as a file of its own: every entry about it, for each its way up to the root of the
 * tree, the root as a signed note, and a signed statement of which rows are about it. Of other entries only hashes are
 * given, so nothing of other customers is handed out.
 */
export const recordFile = z.strictObject({
  state: z.enum(recordStates),
  format: z.literal("underhook record, version 2"),
  subject: z.string(),
  /** when it was taken out, ISO 8601 */
  at: z.string(),
  /** NAME+ID+KEY of the key that signed both notes */
  key: z.string(),
  checkpoint: z.string(),
  statement: z.string(),
  entries: z.array(z.custom<Entry>(isEntry, { error: "no entry of a ledger" })),
  /** of each entry: its index in the tree, and its way up to the root, its sibling first */
  proofs: z.array(z.strictObject({ index: z.number().int().min(0), path: z.array(base64).max(63) })),
});

/** Only what the check below touches; everything else is vouched for by the hash. */
function isEntry(value: unknown): boolean {
  const names = ["id", "bench", "at", "kind", "subject", "hash", "prevHash"];
  const entry = value as Record<string, unknown> | null;
  if (typeof entry !== "object" || entry === null || !Number.isSafeInteger(entry.seq)) return false;
  return names.every((name) => typeof entry[name] === "string") && typeof entry.body === "object";
}

export type RecordFile = z.infer<typeof recordFile>;

/** The file as text; how the record stands is in its first line. */
export function recordText(file: RecordFile): string {
  return `${JSON.stringify(file, null, 1).replace(/^\{\n /, "{ ")}\n`;
}

/**
 * Makes the file of one subject as the ledger stands now. Writes nothing: what the key signs here stands in the file only.
 * Throws LedgerError when there is no such subject.
 */
export async function recordFileOf(
  { store, tiles, key, at }: { store: Store; tiles: Tiles; key: SigningKey; at: string },
  subject: string,
): Promise<RecordFile> {
  const size = (await lastRow(store.db))?.seq ?? 0;
  const entries = (await aboutSubject(store.db, subject)).filter(({ seq }) => seq <= size);
  if (entries.length === 0)
    throw new LedgerError("ledger.record.none", { subject, place: store.place }, "missing");
  const name = await nameOf(store);
  const head = { origin: name, size, root: (await treeAt(store.db, size)).root() };
  const state = recordState(entries);
  const rows = entries.map(({ seq, hash }) => ({ seq, hash }));
  const paths = await tiles.inclusionOf(
    rows.map(({ seq }) => seq),
    size,
  );
  const sign = (text: string) => noteSigned(text, { name, raw: key.raw }, key.sign(text));
  return {
    ...{ state, format: "underhook record, version 2", subject, at },
    key: verifierKey({ name, raw: key.raw }, "note"),
    checkpoint: sign(headText(head)),
    statement: sign(statementText({ head, subject, state, at, rows })),
    entries,
    proofs: rows.map(({ seq }) => ({
      index: seq - 1,
      path: (paths.get(seq) ?? []).map((hash) => hash.toString("base64")),
    })),
  };
}

export type RecordCheck =
  | { good: true; entries: number; keyId: string; state: RecordState; at: string; upTo: number }
  | { good: false; message: Message };

/** Checks a record file by itself: both signatures, every entry, its way up, and that none is left out. Needs no ledger. */
export function checkRecordFile(file: RecordFile): RecordCheck {
  const key = readVerifierKey(file.key);
  const checkpoint = readNote(file.checkpoint);
  const signed = readSigned(file.statement);
  if (key?.type !== "note" || !checkpoint || signedBy(checkpoint, key) !== true)
    return bad(message("ledger.fault.file-checkpoint"));
  const statement = signed && signedBy(signed, key) === true ? readStatement(signed.text) : null;
  if (!statement || headText(statement.head) !== checkpoint.text)
    return bad(message("ledger.fault.file-statement"));
  const { subject, at, state, rows } = statement;
  if (file.subject !== subject || file.at !== at || file.state !== state)
    return bad(message("ledger.fault.file-says-other", { said: file.state, signed: state }));
  const wrong = entriesFault(file, statement);
  if (wrong !== null) return bad(wrong);
  if (recordState(file.entries) !== state)
    return bad(message("ledger.fault.file-says-other", { said: recordState(file.entries), signed: state }));
  return {
    ...{ good: true, entries: rows.length, keyId: keyIdOfRaw(key.raw) },
    ...{ state, at, upTo: statement.head.size },
  };
}

/** The entries must be exactly those that the statement lists, each with its hash, its subject and its way up. */
function entriesFault(
  { entries, proofs }: RecordFile,
  { head, subject, rows }: SubjectStatement,
): Message | null {
  const given = new Set(entries.map(({ seq }) => seq));
  const out = rows.filter(({ seq }) => !given.has(seq)).map(({ seq }) => seq);
  if (out.length > 0) return message("ledger.fault.left-out", { row: out[0]!, count: out.length });
  if (rows.length === 0) return message("ledger.fault.no-entry");
  for (const [place, entry] of entries.entries()) {
    const { seq: row, kind, at } = entry;
    if (entry.subject !== subject)
      return message("ledger.fault.other-subject", { row, kind, subject: entry.subject });
    const text = textOf(entry);
    const listed = rows[place];
    if (
      listed?.seq !== row ||
      listed.hash !== entry.hash ||
      entry.hash !== chainHash(contentHash(text), entry.prevHash)
    )
      return message("ledger.fault.changed", { row, kind, at });
    const { index = -1, path = [] } = proofs[place] ?? {};
    const way = path.map((hash) => Buffer.from(hash, "base64"));
    const root = rootByInclusion(leafHash(contentText(text)), index, head.size, way);
    if (index !== row - 1 || !root?.equals(head.root)) return message("ledger.fault.no-proof", { row, kind });
  }
  return null;
}

function bad(sentence: Message): RecordCheck {
  return { good: false, message: sentence };
}

function textOf(entry: Entry): EntryText {
  const { body, origin } = entry;
  return { ...entry, body: canonicalJson(body), origin: origin ? canonicalJson(origin) : null };
}
