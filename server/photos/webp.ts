import { Refusal } from "../../calibration/refusal.ts";

/** Chunks that draw a still picture (RFC 9649, 2.4 to 2.7); Exif, XMP, profiles and unknown ones are left out. */
const drawing = new Set(["VP8 ", "VP8L", "ALPH"]);
/** Of the flags of VP8X only "has transparency" stays true. */
const transparency = 0x10;
const animation = 0x02;

/** A still WebP with the chunks that draw it alone. Throws Refusal or RangeError. */
export function strippedWebp(bytes: Buffer): { bytes: Buffer; width: number; height: number } {
  const kept: Buffer[] = [];
  let size: { width: number; height: number } | undefined;
  const whole = Math.min(bytes.length, bytes.readUInt32LE(4) + 8);
  for (let at = 12; at + 8 <= whole; ) {
    const name = bytes.subarray(at, at + 4).toString("latin1");
    const length = bytes.readUInt32LE(at + 4);
    const chunk = bytes.subarray(at, at + 8 + length + (length % 2));
    if (chunk.length < 8 + length) throw new RangeError("a chunk breaks off");
    if (name === "VP8X") {
      const flags = chunk.readUInt8(8);
      if (flags & animation) throw new Refusal("photo.refusal.moving");
      const plain = Buffer.from(chunk);
      plain.writeUInt8(flags & transparency, 8);
      kept.push(plain);
    } else if (drawing.has(name)) {
      kept.push(chunk);
      if (name !== "ALPH") size = name === "VP8L" ? losslessSize(chunk) : lossySize(chunk);
    }
    at += chunk.length;
  }
  if (!size) throw new Refusal("photo.refusal.empty");
  const body = Buffer.concat(kept);
  const head = Buffer.from("RIFF....WEBP", "latin1");
  head.writeUInt32LE(body.length + 4, 4);
  return { bytes: Buffer.concat([head, body]), ...size };
}

/** RFC 9649, 3.4: 14 bits each, one less than the size. */
function losslessSize(chunk: Buffer) {
  const bits = chunk.readUInt32LE(9);
  return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
}

/** RFC 6386, 9.1: after three bytes of frame tag and three of start code, 14 bits each. */
function lossySize(chunk: Buffer) {
  return { width: chunk.readUInt16LE(14) & 0x3fff, height: chunk.readUInt16LE(16) & 0x3fff };
}
