import { copyFile, mkdir } from "node:fs/promises";
import { join } from "node:path";
import type { Message } from "../../calibration/message.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { openLedger } from "../ledger/open-ledger.ts";
import { photoFault, photosBeside, type StoredPhoto } from "./photo-folder.ts";
import { photoName } from "./photo-name.ts";

/** Every photo a ledger names, oldest first; one picture of two pieces comes once. */
async function photosOf(ledger: Ledger): Promise<StoredPhoto[]> {
  const entries = await ledger.entries({ kind: "photo" });
  const photos = entries.flatMap(({ kind, body }) => (kind === "photo" ? [body as StoredPhoto] : []));
  return [...new Map(photos.map((photo) => [photo.hash, photo])).values()];
}

/** How many photos a ledger names, and what is wrong with those whose file is missing or was changed. */
export async function verifyPhotos(
  ledger: Ledger,
  folder: string,
): Promise<{ photos: number; wrong: Message[] }> {
  const photos = await photosOf(ledger);
  const wrong: Message[] = [];
  for (const photo of photos) {
    const fault = await photoFault(folder, photo);
    if (fault !== null) wrong.push(fault);
  }
  return { photos: photos.length, wrong };
}

/**
 * Copies the photos a ledger names from beside one file to beside another: with a backup and with what is restored from
 * it. A photo that is missing or was changed is named and does not keep the others back.
 */
export async function copyPhotos(
  from: string,
  to: string,
  now: () => Date,
): Promise<{ photos: number; wrong: Message[] }> {
  const ledger = await openLedger({ file: to, now, bench: "photos", readOnly: true });
  try {
    const [source, target] = [photosBeside(from), photosBeside(to)];
    const photos = await photosOf(ledger);
    const wrong: Message[] = [];
    if (photos.length > 0) await mkdir(target, { recursive: true, mode: 0o700 });
    for (const photo of photos) {
      const fault = await photoFault(source, photo);
      if (fault !== null) wrong.push(fault);
      else if (source !== target)
        await copyFile(join(source, photoName(photo)), join(target, photoName(photo)));
    }
    return { photos: photos.length, wrong };
  } finally {
    await ledger.close();
  }
}
