import { createHash, createPublicKey, verify } from "node:crypto";

/** The head of a tree, as a signed note says it (C2SP tlog-checkpoint): whose, how many leaves, the root. */
export interface TreeHead {
  origin: string;
  size: number;
  root: Buffer;
}

/** One signature line of a note: the name of who signed, the four bytes of the key id as hex, what was signed. */
interface NoteSignature {
  name: string;
  keyId: string;
  signature: Buffer;
}

/** A signed note taken apart (C2SP signed-note). `text` is what is signed, its last newline included. */
export interface Signed {
  text: string;
  signatures: NoteSignature[];
}

/** A signed note that says the head of a tree. */
export interface Note extends Signed {
  head: TreeHead;
}

/** A key that signs notes: the name it signs by and its 32 bytes of Ed25519. */
export interface NoteKey {
  name: string;
  raw: Buffer;
}

/** Types of signature: of a note itself, and of a witness with its time (C2SP signed-note, tlog-cosignature). */
const signatureType = { note: 1, cosignature: 4 } as const;
export type SignatureType = keyof typeof signatureType;

/** The name by which a ledger is known to others; `firstHash` is the hash of its first entry, 64 hex digits. */
export function logName(firstHash: string): string {
  return `underhook/${firstHash}`;
}

/** The three lines that are signed. */
export function headText({ origin, size, root }: TreeHead): string {
  return `${origin}\n${size}\n${root.toString("base64")}\n`;
}

/** First four bytes of SHA-256 over name, newline, type and key, as hex. */
function noteKeyId({ name, raw }: NoteKey, type: SignatureType): string {
  const start = Buffer.from(`${name}\n`);
  return createHash("sha256")
    .update(Buffer.concat([start, Buffer.of(signatureType[type]), raw]))
    .digest("hex")
    .slice(0, 8);
}

/** One signature line, its newline included. */
export function signatureLine(key: NoteKey, type: SignatureType, signature: Buffer): string {
  const bytes = Buffer.concat([Buffer.from(noteKeyId(key, type), "hex"), signature]);
  return `\u2014 ${key.name} ${bytes.toString("base64")}\n`;
}

/** The line by which a key is handed to others: name, key id and key (C2SP signed-note, "verifier keys"). */
export function verifierKey(key: NoteKey, type: SignatureType): string {
  const bytes = Buffer.concat([Buffer.of(signatureType[type]), key.raw]);
  return `${key.name}+${noteKeyId(key, type)}+${bytes.toString("base64")}`;
}

/** Reads a line made by `verifierKey`; null when it is none, or its key id does not fit. */
export function readVerifierKey(line: string): (NoteKey & { type: SignatureType }) | null {
  const [, name = "", id = "", encoded = ""] =
    /^([^\s+]{1,200})\+([0-9a-f]{8})\+([A-Za-z0-9+/]{44})$/.exec(line.trim()) ?? [];
  const bytes = Buffer.from(encoded, "base64");
  const type = bytes[0] === 1 ? "note" : bytes[0] === 4 ? "cosignature" : null;
  if (type === null || bytes.length !== 33) return null;
  const key = { name, raw: bytes.subarray(1) };
  return noteKeyId(key, type) === id ? { ...key, type } : null;
}

/** The note that says this text, signed by one key; `signature` in base64. */
export function noteSigned(text: string, key: NoteKey, signature: string): string {
  return `${text}\n${signatureLine(key, "note", Buffer.from(signature, "base64"))}`;
}

/** Takes a signed note apart; null when it is none. Nothing is verified. */
export function readSigned(note: string): Signed | null {
  const end = note.lastIndexOf("\n\n");
  if (end < 0) return null;
  const signatures: NoteSignature[] = [];
  for (const line of note.slice(end + 2).split("\n")) {
    if (line === "") continue;
    const [, name = "", encoded = ""] = /^\u2014 ([^\s+]+) ([A-Za-z0-9+/]+=*)$/.exec(line) ?? [];
    const signed = Buffer.from(encoded, "base64");
    if (name === "" || signed.length < 5) return null;
    signatures.push({ name, keyId: signed.toString("hex", 0, 4), signature: signed.subarray(4) });
  }
  return signatures.length === 0 ? null : { text: note.slice(0, end + 1), signatures };
}

/** Takes a signed checkpoint apart; null when it is none. Nothing is verified. */
export function readNote(note: string): Note | null {
  const signed = note.length > 20_000 ? null : readSigned(note);
  const [origin = "", size = "", root = ""] = signed?.text.split("\n") ?? [];
  if (!signed || !/^[^\s+]{1,200}$/.test(origin) || !/^(0|[1-9]\d{0,14})$/.test(size)) return null;
  const bytes = Buffer.from(root, "base64");
  if (bytes.length !== 32 || bytes.toString("base64") !== root) return null;
  return { ...signed, head: { origin, size: Number(size), root: bytes } };
}

/**
 * Whether the key signed the note: true, false when it did not, "bad" when a line of its own does not hold. By the rule
 * of C2SP signed-note a note with a bad signature of a known key is refused whole.
 */
export function signedBy({ text, signatures }: Signed, key: NoteKey): boolean | "bad" {
  const own = signatures.filter(({ name, keyId }) => name === key.name && keyId === noteKeyId(key, "note"));
  if (own.length === 0) return false;
  return own.every(({ signature }) => holds(text, signature, key.raw)) ? true : "bad";
}

/** The text of which a witness signs that it is the longest tree of this origin it saw by that time, s since 1970. */
export function cosignedText(time: number, text: string): string {
  return `cosignature/v1\ntime ${time}\n${text}`;
}

/** What follows the key id in a cosignature: eight bytes of time, most significant first, and the signature. */
export function cosignatureBytes(time: number, signature: Buffer): Buffer {
  const at = Buffer.alloc(8);
  at.writeBigUInt64BE(BigInt(time));
  return Buffer.concat([at, signature]);
}

/** When the witness cosigned the note, s since 1970; null when it did not, or its signature does not hold. */
export function cosignedAt({ text, signatures }: Note, key: NoteKey): number | null {
  const id = noteKeyId(key, "cosignature");
  for (const { name, keyId, signature } of signatures) {
    if (name !== key.name || keyId !== id || signature.length !== 72) continue;
    const time = Number(signature.readBigUInt64BE(0));
    if (holds(cosignedText(time, text), signature.subarray(8), key.raw)) return time;
  }
  return null;
}

/** The DER that stands before the 32 bytes of an Ed25519 key in its SPKI (RFC 8410). */
const spkiHead = Buffer.from("302a300506032b6570032100", "hex");

/** The 32 bytes of a key given as SPKI, DER, base64; null when it is no Ed25519 key. */
export function rawKeyOf(publicKey: string): Buffer | null {
  const der = Buffer.from(publicKey, "base64");
  return der.length === 44 && der.subarray(0, 12).equals(spkiHead) ? der.subarray(12) : null;
}

/** The SPKI, DER, of the 32 bytes of a key. */
export function spkiOf(raw: Buffer): Buffer {
  return Buffer.concat([spkiHead, raw]);
}

function holds(text: string, signature: Buffer, raw: Buffer): boolean {
  const key = createPublicKey({ key: spkiOf(raw), type: "spki", format: "der" });
  return verify(null, Buffer.from(text), key, signature);
}
