import type { BodyOf } from "./kinds.ts";

/** A signature over the chain up to an entry: whoever rewrites the chain cannot make it again without the key. */
export type Checkpoint = BodyOf<"checkpoint">;

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
