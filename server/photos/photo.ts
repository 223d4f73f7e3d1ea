import { Refusal } from "../../calibration/refusal.ts";
import { strippedJpeg } from "./jpeg.ts";
import { strippedPng } from "./png.ts";
import { strippedWebp } from "./webp.ts";

export const photoTypes = ["image/jpeg", "image/png", "image/webp"] as const;
export type PhotoType = (typeof photoTypes)[number];

/** A picture with nothing in it but the picture. Width and height in pixels, as it is to be shown. */
export interface Photo {
  type: PhotoType;
  bytes: Buffer;
  width: number;
  height: number;
}

/** The largest file that is taken, bytes: a telephone's photo at full size is well below it. */
export const photoLimit = 12 * 1024 * 1024;

/** The most pixels that are taken: a small file can name so many that whoever draws it runs out of memory. */
const pixelLimit = 120_000_000;

/**
 * The picture rebuilt from the parts that draw it: place, time, camera, previews, comments and whatever follows the
 * picture's end are left out. What the file is comes from its bytes, never from its name. Throws Refusal.
 */
export function photoFrom(bytes: Buffer): Photo {
  if (bytes.length === 0) throw new Refusal("photo.refusal.none");
  if (bytes.length > photoLimit)
    throw new Refusal("photo.refusal.too-large", {
      megabytes: bytes.length / 1024 / 1024,
      most: photoLimit / 1024 / 1024,
    });
  const photo = stripped(bytes);
  const { width, height } = photo;
  if (width * height > pixelLimit)
    throw new Refusal("photo.refusal.too-many-pixels", { width, height, megapixels: pixelLimit / 1e6 });
  return photo;
}

function stripped(bytes: Buffer): Photo {
  try {
    if (bytes.readUInt16BE(0) === 0xffd8) return { type: "image/jpeg", ...strippedJpeg(bytes) };
    if (bytes.subarray(1, 4).toString("latin1") === "PNG")
      return { type: "image/png", ...strippedPng(bytes) };
    if (bytes.subarray(8, 12).toString("latin1") === "WEBP")
      return { type: "image/webp", ...strippedWebp(bytes) };
  } catch (error) {
    // A length that points outside of the file: Buffer reads throw RangeError.
    if (!(error instanceof RangeError)) throw error;
    throw new Refusal("photo.refusal.damaged");
  }
  throw new Refusal("photo.refusal.other-type");
}
