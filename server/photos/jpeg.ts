import { Refusal } from "../../calibration/refusal.ts";
import { orientationIn, orientationOnly } from "./orientation.ts";

/** Markers of ITU-T T.81 (JPEG), table B.1. */
const startOfScan = 0xda;
const endOfImage = 0xd9;
const tables = new Set([0xc4, 0xcc, 0xdb, 0xdd]);
const isFrame = (marker: number) =>
  marker >= 0xc0 && marker <= 0xcf && !tables.has(marker) && marker !== 0xc8;
const isRestart = (marker: number) => marker >= 0xd0 && marker <= 0xd7;

/**
 * A JPEG (ITU-T T.81) with its frames, tables and scans alone. Of application data stays only what changes the picture:
 * the colour transform (APP14) and how it is turned, written anew. Throws Refusal or RangeError.
 */
export function strippedJpeg(bytes: Buffer): { bytes: Buffer; width: number; height: number } {
  const kept: Buffer[] = [];
  let orientation = 1;
  let size: { width: number; height: number } | undefined;
  let scanned = false;
  for (let at = 2; ; ) {
    if (bytes.readUInt8(at) !== 0xff) throw new RangeError("a marker is missing");
    const marker = bytes.readUInt8(at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === endOfImage) break;
    const end = at + 2 + bytes.readUInt16BE(at + 2);
    const segment = bytes.subarray(at, end);
    if (segment.length < end - at) throw new RangeError("a segment breaks off");
    if (isFrame(marker)) {
      size = { height: segment.readUInt16BE(5), width: segment.readUInt16BE(7) };
      kept.push(segment);
    } else if (tables.has(marker)) kept.push(segment);
    else if (marker === 0xee && segment.subarray(4, 9).toString("latin1") === "Adobe") kept.push(segment);
    else if (marker === 0xe1) orientation = orientationIn(segment.subarray(4)) ?? orientation;
    if (marker !== startOfScan) {
      at = end;
      continue;
    }
    const next = endOfScan(bytes, end);
    kept.push(bytes.subarray(at, next));
    scanned = true;
    at = next;
  }
  if (!size || !scanned || size.width === 0 || size.height === 0) throw new Refusal("photo.refusal.empty");
  const { width, height } = size;
  return {
    bytes: Buffer.concat([
      Buffer.from([0xff, 0xd8]),
      ...(orientation === 1 ? [] : [orientationOnly(orientation)]),
      ...kept,
      Buffer.from([0xff, endOfImage]),
    ]),
    ...(orientation >= 5 ? { width: height, height: width } : { width, height }),
  };
}

/** Where the coded data of a scan ends: at the next marker that is no stuffed byte and no restart (B.1.1.2). */
function endOfScan(bytes: Buffer, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at !== -1; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes.readUInt8(at + 1);
    if (next !== 0 && next !== 0xff && !isRestart(next)) return at;
  }
  throw new RangeError("the end of the picture is missing");
}
