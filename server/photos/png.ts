import { Refusal } from "../../calibration/refusal.ts";

/** Chunks that draw the picture (W3C PNG, third edition, 5.6); text, time, Exif, profiles and unknown ones are left out. */
const drawing = new Set(["IHDR", "PLTE", "tRNS", "IDAT", "IEND", "gAMA", "cHRM", "sRGB", "sBIT", "bKGD"]);

/** A PNG with the chunks that draw it alone, up to its end. Throws Refusal or RangeError. */
export function strippedPng(bytes: Buffer): { bytes: Buffer; width: number; height: number } {
  const kept: Buffer[] = [bytes.subarray(0, 8)];
  for (let at = 8; ; ) {
    const end = at + 12 + bytes.readUInt32BE(at);
    const name = bytes.subarray(at + 4, at + 8).toString("latin1");
    if (end > bytes.length) throw new RangeError("a chunk breaks off");
    if (drawing.has(name)) kept.push(bytes.subarray(at, end));
    if (name === "IEND") break;
    at = end;
  }
  const [width, height] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  const drawn = kept.some((chunk) => chunk.subarray(4, 8).toString("latin1") === "IDAT");
  if (!drawn || width === 0 || height === 0) throw new Refusal("photo.refusal.empty");
  return { bytes: Buffer.concat(kept), width, height };
}
