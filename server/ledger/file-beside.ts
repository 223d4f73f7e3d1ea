import { hash } from "node:crypto";
import { mkdir, open, readFile, rename, rm } from "node:fs/promises";
import { join } from "node:path";

/** SHA-256 of bytes or of text in UTF-8, 64 hexadecimal digits. */
export const sha256 = (bytes: Buffer | string) => hash("sha256", bytes, "hex");

/**
 * Writes a file of a folder beside the ledger: whole on the disk before the entry that names it is written, so that an
 * entry never names a file that was not stored. Throws what the file system threw; nothing half-written stays.
 */
export async function writeBeside(folder: string, name: string, bytes: Buffer | string): Promise<void> {
  const file = join(folder, name);
  const part = `${file}.part`;
  try {
    await mkdir(folder, { recursive: true, mode: 0o700 });
    const written = await open(part, "w", 0o600);
    try {
      await written.writeFile(bytes);
      await written.sync();
    } finally {
      await written.close();
    }
    await rename(part, file);
  } catch (cause) {
    await rm(part, { force: true });
    throw cause;
  }
}

/** The bytes of a file whose SHA-256 the ledger names; "missing" or "changed" when it is not that file. */
export async function readBeside(
  folder: string,
  name: string,
  expected: string,
): Promise<Buffer | "missing" | "changed"> {
  const bytes = await readFile(join(folder, name)).catch(() => null);
  if (bytes === null) return "missing";
  return sha256(bytes) === expected ? bytes : "changed";
}
