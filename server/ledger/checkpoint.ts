import type { BodyOf } from "./kinds.ts";
import { readNote } from "./note.ts";

/** A signature over the chain up to an entry: whoever rewrites the chain cannot make it again without the key. */
export type Checkpoint = BodyOf<"checkpoint">;

/** A checkpoint that was kept elsewhere: a line of this program, or a signed note over the tree. */
export interface OutsideHead {
  /** the row it vouches for, and all before it */
  seq: number;
  /** hash of that row, hex; of a line */
  hash?: string;
  /** key that signed it; of a line, whose signature is checked */
  signed?: Pick<Checkpoint, "keyId" | "signature">;
  /** name of the ledger and root of the tree, base64; of a note */
  origin?: string;
  root?: string;
}

/** At most so many entries are written between two checkpoints. */
export const checkpointEvery = 100;

/** The text that is signed. */
export function signedText(seq: number, hash: string): string {
  return `underhook checkpoint\n${seq}\n${hash}\n`;
}

/** The text a key signs to vouch for the one that follows it. */
export function successorText(keyId: string): string {
  return `underhook successor\n${keyId}\n`;
}

/** A checkpoint as one line to print, send or keep elsewhere; `readCheckpoint` reads it back. */
export function writtenCheckpoint({ seq, hash, keyId, signature }: Checkpoint): string {
  return `checkpoint ${seq} ${hash} ${keyId} ${signature}`;
}

/** Reads a line made by `writtenCheckpoint`; null when it is none. */
export function readCheckpoint(line: string): Checkpoint | null {
  const match = /^checkpoint (\d{1,15}) ([0-9a-f]{64}) ([0-9a-f]{64}) ([A-Za-z0-9+/=]+)$/.exec(line.trim());
  if (!match) return null;
  const [, seq = "", hash = "", keyId = "", signature = ""] = match;
  return { seq: Number(seq), hash, keyId, signature };
}

/** What was kept elsewhere, as a line or as the text of a signed note; null when it is neither. */
export function readOutside(text: string): OutsideHead | null {
  const line = readCheckpoint(text);
  if (line) {
    const { seq, hash, keyId, signature } = line;
    return { seq, hash, signed: { keyId, signature } };
  }
  const note = readNote(`${text.trim()}\n`);
  return note && { seq: note.head.size, origin: note.head.origin, root: note.head.root.toString("base64") };
}
