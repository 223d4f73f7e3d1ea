import { chmodSync, closeSync, existsSync, openSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { DatabaseSync } from "@photostructure/sqlite";
import { LedgerError } from "./error.ts";

/** The right to write one ledger file, held by one process at a time. */
export interface Ownership {
  release(): void;
}

/**
 * Takes the right to write `file`. It is an exclusive lock of the operating system on a small file beside it, so a
 * process that is killed gives it up at once and no stale lock is left behind.
 * Throws LedgerError "in-use" when another process, or another part of this one, holds it.
 */
export function own(file: string, at: string): Ownership {
  const note = `${file}-owner.txt`;
  for (const one of [`${file}-owner`, note]) onlyForItsOwner(one);
  const lock = new DatabaseSync(`${file}-owner`, { timeout: 0 });
  try {
    lock.exec("begin exclusive");
  } catch (cause) {
    lock.close();
    if (!(cause instanceof Error && "errcode" in cause && cause.errcode === 5)) throw cause;
    throw new LedgerError("ledger.in-use", { file, holder: holder(note) }, "in-use", cause);
  }
  try {
    writeFileSync(note, `process ${process.pid}, since ${at}\n`);
  } catch (cause) {
    lock.close();
    throw cause;
  }
  return {
    release() {
      if (lock.isOpen) lock.close();
    },
  };
}

/** What customers brought is read by the owner of the ledger only; the log beside it gets the same rights from SQLite. */
export function onlyForItsOwner(file: string): void {
  if (!existsSync(file)) closeSync(openSync(file, "a", 0o600));
  if ((statSync(file).mode & 0o077) !== 0) chmodSync(file, 0o600);
}

function holder(note: string): string {
  try {
    return ` (${readFileSync(note, "utf8").trim()})`;
  } catch {
    return "";
  }
}
