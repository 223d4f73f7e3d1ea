import { type Message, message } from "../../../calibration/message.ts";
import type { Ledger } from "../ledger.ts";
import { cosignedAt, type NoteKey, readNote } from "../note.ts";
import { type Answer, checkpointRequest } from "./add-checkpoint.ts";

/** Somebody who can be asked to cosign. */
export interface Asked {
  /** the folder, the address, as it is told */
  name: string;
  key: NoteKey;
  send(request: string): Promise<Answer>;
}

/**
 * Asks a witness to cosign a checkpoint of the ledger, from the size it says it saw. Gives its line, or what it refused:
 * a witness that saw more than the ledger holds, or another tree, is what it is there for. Throws what sending throws.
 */
export async function askToCosign(
  ledger: Ledger,
  note: string,
  asked: Asked,
): Promise<{ line: string } | { message: Message }> {
  const head = readNote(note)?.head;
  if (!head) return { message: message("ledger.witness.refused", { witness: asked.name, status: 400 }) };
  const { size } = head;
  const request = async (old: number) =>
    asked.send(checkpointRequest(old, await ledger.consistencyProof(old, size), note));
  let answer = await request(size);
  if (answer.status === 409) {
    const seen = Number(answer.body.trim());
    if (!(Number.isSafeInteger(seen) && seen >= 0)) return { message: refused(asked, answer) };
    if (seen > size)
      return { message: message("ledger.witness.saw-more", { witness: asked.name, seen, size }) };
    if (seen === size) return { message: message("ledger.witness.saw-other", { witness: asked.name, seen }) };
    answer = await request(seen);
    if (answer.status === 422)
      return { message: message("ledger.witness.saw-other", { witness: asked.name, seen }) };
  }
  if (answer.status !== 200) return { message: refused(asked, answer) };
  const line = answer.body.split("\n").find((one) => {
    const read = readNote(`${note}${one}\n`);
    return read !== null && cosignedAt(read, asked.key) !== null;
  });
  return line === undefined
    ? { message: message("ledger.witness.no-cosignature", { witness: asked.name }) }
    : { line: `${line}\n` };
}

function refused({ name }: Asked, { status }: Answer): Message {
  return message("ledger.witness.refused", { witness: name, status });
}
