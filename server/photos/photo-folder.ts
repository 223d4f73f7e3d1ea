import { hash } from "node:crypto";
import { mkdir, open, readFile, rename, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { BodyOf } from "../ledger/kinds.ts";
import { LedgerTrouble } from "../ledger/trouble.ts";
import type { Photo } from "./photo.ts";
import { photoName } from "./photo-name.ts";

/** What the ledger says of a kept photo. */
export type KeptPhoto = BodyOf<"photo">;

/** The photos that belong to a ledger: a folder beside its file. */
export function photosBeside(ledgerFile: string): string {
  return join(dirname(ledgerFile), "photos");
}

/** The key of a photo of a piece: the same picture sent twice is kept once. */
export function photoKey(piece: string, hash: string): string {
  return `photo-${piece}-${hash}`;
}

/**
 * Puts a photo on the disk under its hash and gives what the ledger is to say of it. The file is there before the entry
 * that names it: an entry never names a photo that was not stored. Throws LedgerTrouble.
 */
export async function keepPhoto(folder: string, { bytes, type, width, height }: Photo): Promise<KeptPhoto> {
  const kept = { hash: hash("sha256", bytes, "hex"), bytes: bytes.length, type, width, height };
  const file = join(folder, photoName(kept));
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
    return kept;
  } catch (cause) {
    await rm(part, { force: true });
    throw new LedgerTrouble(
      "read-only",
      `The photo could not be written to ${folder}: ${(cause as Error).message}. Nothing was stored; make room or give the right to write, and send it again.`,
      cause,
    );
  }
}

/** What is wrong with the file of a photo, in words; null when it is the photo the ledger names. */
export async function photoFault(folder: string, photo: KeptPhoto): Promise<string | null> {
  const name = photoName(photo);
  const bytes = await readFile(join(folder, name)).catch(() => null);
  if (bytes === null) return `the photo ${name} is missing from ${folder}`;
  return hash("sha256", bytes, "hex") === photo.hash
    ? null
    : `the photo ${name} was changed: its bytes do not fit its hash`;
}
