import { strippedJpeg } from "./jpeg.ts";
import { strippedPng } from "./png.ts";
import { PhotoRefused } from "./refused.ts";
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

/**
 * The picture rebuilt from the parts that draw it: place, time, camera, previews, comments and whatever follows the
 * picture's end are left out. What the file is comes from its bytes, never from its name. Throws PhotoRefused.
 */
export function photoFrom(bytes: Buffer): Photo {
  if (bytes.length === 0)
    throw new PhotoRefused("No picture was chosen. Take one with the camera, or choose a file.");
  if (bytes.length > photoLimit)
    throw new PhotoRefused(
      `The picture has ${(bytes.length / 1024 / 1024).toFixed(1)} MB; at most ${photoLimit / 1024 / 1024} MB are taken. Choose a smaller size on the camera.`,
    );
  try {
    if (bytes.readUInt16BE(0) === 0xffd8) return { type: "image/jpeg", ...strippedJpeg(bytes) };
    if (bytes.subarray(1, 4).toString("latin1") === "PNG")
      return { type: "image/png", ...strippedPng(bytes) };
    if (bytes.subarray(8, 12).toString("latin1") === "WEBP")
      return { type: "image/webp", ...strippedWebp(bytes) };
  } catch (error) {
    // A length that points outside of the file: Buffer reads throw RangeError.
    if (error instanceof PhotoRefused) throw error;
    throw new PhotoRefused(
      "The picture breaks off in the middle or is damaged, so nothing was stored. Take it again.",
    );
  }
  throw new PhotoRefused(
    "That file is no JPEG, PNG or WebP picture, and no other is taken. Let the camera save as JPEG.",
  );
}
