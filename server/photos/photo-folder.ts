import { dirname, join } from "node:path";
import { type Message, message } from "../../calibration/message.ts";
import { LedgerError } from "../ledger/error.ts";
import { readBeside, sha256, writeBeside } from "../ledger/file-beside.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { Photo } from "./photo.ts";
import { photoName } from "./photo-name.ts";

/** What the ledger says of a kept photo. */
export type StoredPhoto = BodyOf<"photo">;

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
 * that names it: an entry never names a photo that was not stored. Throws LedgerError.
 */
export async function keepPhoto(folder: string, { bytes, type, width, height }: Photo): Promise<StoredPhoto> {
  const kept = { hash: sha256(bytes), bytes: bytes.length, type, width, height };
  try {
    await writeBeside(folder, photoName(kept), bytes);
    return kept;
  } catch (cause) {
    throw new LedgerError(
      "photo.folder.cannot-write",
      { folder, cause: (cause as Error).message },
      "read-only",
      cause,
    );
  }
}

/** What is wrong with the file of a photo, as a message; null when it is the photo the ledger names. */
export async function photoFault(folder: string, photo: StoredPhoto): Promise<Message | null> {
  const name = photoName(photo);
  const found = await readBeside(folder, name, photo.hash);
  if (found === "missing") return message("photo.file.missing", { name, folder });
  return found === "changed" ? message("photo.file.changed", { name }) : null;
}
