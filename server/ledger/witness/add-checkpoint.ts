import { type NoteKey, readNote, signedBy, type TreeHead } from "../note.ts";
import { isConsistent } from "../tree.ts";

/** What a witness remembers, and how it signs. */
export interface Witness {
  /** the longest tree it saw of this origin; null when it saw none */
  seen(origin: string): Promise<{ size: number; root: Buffer } | null>;
  /** keeps a longer one, with its note, before anything is answered; resolves when it is on the disk */
  keep(head: TreeHead, note: string): Promise<void>;
  /** its signature line over the text of a checkpoint */
  cosign(text: string): Promise<string>;
}

export interface Answer {
  status: 200 | 400 | 403 | 404 | 409 | 422;
  body: string;
}

/** What is asked of a witness (C2SP tlog-witness, add-checkpoint): the size it saw, the proof from there, the checkpoint. */
export function checkpointRequest(old: number, proof: readonly Buffer[], note: string): string {
  const lines = proof.map((hash) => `${hash.toString("base64")}\n`).join("");
  return `old ${old}\n${lines}\n${note}`;
}

const mostProofLines = 63;

/**
 * Answers a request by the rules of C2SP tlog-witness: only checkpoints of a known origin and key, only such as the longest
 * tree that was seen is the beginning of. Requests of one witness must come one after the other.
 */
export async function addCheckpoint(
  witness: Witness,
  known: readonly NoteKey[],
  request: string,
): Promise<Answer> {
  const end = request.indexOf("\n\n");
  const [first = "", ...proofLines] = request.slice(0, end).split("\n");
  const old = Number(/^old (0|[1-9]\d{0,14})$/.exec(first)?.[1] ?? Number.NaN);
  const note = end < 0 ? null : readNote(request.slice(end + 2));
  const proof = proofLines.map((line) => Buffer.from(line, "base64"));
  const whole = proof.every((hash, place) => hash.toString("base64") === proofLines[place]);
  if (!note || Number.isNaN(old) || !whole || proof.length > mostProofLines || old > note.head.size)
    return { status: 400, body: "" };
  const { head } = note;
  const key = known.find(({ name }) => name === head.origin);
  if (!key) return { status: 404, body: "" };
  if (signedBy(note, key) !== true) return { status: 403, body: "" };
  const seen = (await witness.seen(head.origin)) ?? { size: 0, root: Buffer.alloc(0) };
  const another = seen.size === head.size && head.size > 0 && !seen.root.equals(head.root);
  if (old !== seen.size || another) return { status: 409, body: `${seen.size}\n` };
  if (!isConsistent(seen, head, proof)) return { status: 422, body: "" };
  if (head.size > seen.size) await witness.keep(head, request.slice(end + 2));
  return { status: 200, body: await witness.cosign(note.text) };
}
