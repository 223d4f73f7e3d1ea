import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { LedgerError } from "../error.ts";
import { writeBeside } from "../file-beside.ts";
import { type NoteKey, readNote } from "../note.ts";
import { signingKey } from "../signing-key.ts";
import { type Answer, addCheckpoint } from "./add-checkpoint.ts";
import { cosignatureLine } from "./cosignature-line.ts";

/** The file of the newest checkpoint of a ledger in a folder; the name of a ledger holds a slash. */
function checkpointFile(folder: string, origin: string): string {
  return join(folder, nameOfFile(origin));
}

const nameOfFile = (origin: string) =>
  `underhook-${createHash("sha256").update(origin).digest("hex").slice(0, 16)}.checkpoint`;

/**
 * A folder on another disk as a witness: it holds a key of its own, made at first use, and the newest checkpoint of every
 * ledger that was shown to it, cosigned. Throws LedgerError "missing" while it is not there, such as a stick that is not
 * plugged in.
 */
export function folderWitness(folder: string, now: () => Date) {
  const known = () => {
    if (!existsSync(folder)) throw new LedgerError("ledger.witness.no-folder", { folder }, "missing");
    const key = signingKey(join(folder, "underhook-witness-key.pem"), { anyMode: true });
    return { name: `underhook-witness/${key.keyId}`, key };
  };
  return {
    key(): NoteKey {
      const { name, key } = known();
      return { name, raw: key.raw };
    },
    async ask(logs: readonly NoteKey[], request: string): Promise<Answer> {
      const own = known();
      let newest: string | undefined;
      const answer = await addCheckpoint(
        {
          async seen(origin) {
            const text = await readFile(checkpointFile(folder, origin), "utf8").catch(() => "");
            return readNote(text)?.head ?? null;
          },
          keep: async (_head, note) => {
            newest = note;
          },
          cosign: async (text) => cosignatureLine(own, text, now()),
        },
        logs,
        request,
      );
      // Checkpoint and cosignature go onto the stick as one file, so that it is whole whenever it is pulled.
      if (answer.status === 200 && newest !== undefined)
        await writeBeside(folder, nameOfFile(logs[0]?.name ?? ""), `${newest}${answer.body}`);
      return answer;
    },
  };
}
