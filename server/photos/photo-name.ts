import { keysOf } from "../../calibration/keyed.ts";
import type { PhotoType } from "./photo.ts";

const endings: Record<PhotoType, string> = { "image/jpeg": "jpg", "image/png": "png", "image/webp": "webp" };

/** The file name of a photo: its SHA-256, so that a changed file is no longer the photo. */
export function photoName({ hash, type }: { hash: string; type: PhotoType }): string {
  return `${hash}.${endings[type]}`;
}

/** The type of a photo's file name; undefined when it is no such name. */
export function typeOfName(name: string): PhotoType | undefined {
  const [, ending] = /^[0-9a-f]{64}\.(jpg|png|webp)$/.exec(name) ?? [];
  return keysOf(endings).find((type) => endings[type] === ending);
}
