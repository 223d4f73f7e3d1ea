import { dirname, join } from "node:path";
import { message } from "../../calibration/message.ts";
import { reasonOf } from "../../calibration/reason.ts";
import { LedgerError } from "../ledger/error.ts";
import { sha256, writeBeside } from "../ledger/file-beside.ts";
import type { BodyOf } from "../ledger/kinds.ts";
import type { FilesBeside } from "../ledger/named-files.ts";
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
      { folder, cause: reasonOf(cause) },
      "read-only",
      cause,
    );
  }
}

/** The photos that a ledger names; one picture of two pieces comes once. */
export const photoFiles: FilesBeside = {
  folder: photosBeside,
  async named(ledger) {
    const entries = await ledger.entries({ kind: "photo", own: true });
    const photos = entries.flatMap(({ kind, body }) => (kind === "photo" ? [body as StoredPhoto] : []));
    const once = new Map(photos.map((photo) => [photo.hash, photo]));
    return [...once.values()].map((photo) => [{ name: photoName(photo), hash: photo.hash }]);
  },
  fault: (found, name, folder) =>
    found === "missing"
      ? message("photo.file.missing", { name, folder })
      : message("photo.file.changed", { name }),
};
