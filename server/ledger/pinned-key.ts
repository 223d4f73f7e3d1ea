import { readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";

/**
 * The file that names the trusted key of a data folder: beside the folder, not in it, so that whoever exchanges the
 * folder does not exchange it too. One line, the key id; lines that begin with # are remarks.
 */
export function pinnedKeyFile(folder: string): string {
  return `${resolve(folder)}.trusted-key`;
}

/** The key that is pinned for a data folder; null when there is none. */
export function pinnedKey(folder: string): string | null {
  try {
    return /^\s*([0-9a-f]{64})\s*$/m.exec(readFileSync(pinnedKeyFile(folder), "utf8"))?.[1] ?? null;
  } catch {
    return null;
  }
}

/** Pins a key where none is pinned yet. False when it could not be written: the folder around is not this user's. */
export function pinKey(folder: string, keyId: string): boolean {
  if (pinnedKey(folder) !== null) return true;
  try {
    writeFileSync(pinnedKeyFile(folder), `# trusted key of the ledger in ${resolve(folder)}\n${keyId}\n`, {
      flag: "wx",
      mode: 0o644,
    });
    return true;
  } catch {
    return false;
  }
}
