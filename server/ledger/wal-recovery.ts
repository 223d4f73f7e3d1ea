import { copyFileSync, existsSync, readFileSync, statSync } from "node:fs";
import { type Message, message } from "../../calibration/message.ts";

/** What the write-ahead log of a ledger holds after a power cut or crash. */
export interface WalTail {
  /** bytes of whole, committed transactions */
  committed: number;
  /** bytes after them that belong to a write that was cut off; 0 when there was none */
  torn: number;
}

const headerBytes = 32;
const frameHeaderBytes = 24;

/**
 * Reads a write-ahead log and finds where the last whole transaction ends, by the rules of the file format
 * (sqlite.org/fileformat2.html, section 4: the WAL file format; salts and running checksums).
 * Frames of an earlier round with other salts are leftovers, not a torn write.
 */
export function walTail(wal: Uint8Array): WalTail {
  if (wal.length === 0) return { committed: 0, torn: 0 };
  if (wal.length < headerBytes) return { committed: 0, torn: wal.length };
  const view = new DataView(wal.buffer, wal.byteOffset, wal.byteLength);
  const littleEndian = (view.getUint32(0) & 1) === 0;
  const frame = frameHeaderBytes + pageSize(view.getUint32(8));
  let sum = checksum(view, 0, headerBytes - 8, littleEndian, [0, 0]);
  if (!stands(view, headerBytes - 8, sum)) return { committed: 0, torn: wal.length };
  let committed = headerBytes;
  let at = headerBytes;
  for (; at + frame <= wal.length; at += frame) {
    const sameRound =
      view.getUint32(at + 8) === view.getUint32(16) && view.getUint32(at + 12) === view.getUint32(20);
    if (!sameRound) return { committed, torn: at - committed };
    sum = checksum(view, at, 8, littleEndian, sum);
    sum = checksum(view, at + frameHeaderBytes, frame - frameHeaderBytes, littleEndian, sum);
    if (!stands(view, at + 16, sum)) return { committed, torn: wal.length - committed };
    if (view.getUint32(at + 4) !== 0) committed = at + frame;
  }
  return { committed, torn: wal.length - committed };
}

/**
 * Looks at the log beside a ledger before it is opened. A torn tail is copied aside, since opening drops it.
 * Gives messages for the page: none when the ledger was closed properly.
 */
export function unfinishedWrites(file: string, at: string): Message[] {
  const wal = `${file}-wal`;
  if (!existsSync(wal) || statSync(wal).size === 0) return [];
  const { torn } = walTail(readFileSync(wal));
  const found = [message("ledger.recovery.not-closed")];
  if (torn > 0) {
    const kept = `${wal}-torn-${at.replaceAll(":", "-")}`;
    copyFileSync(wal, kept);
    found.push(message("ledger.recovery.cut-off", { bytes: torn, kept }));
  }
  return found;
}

function pageSize(written: number): number {
  return written === 1 ? 65536 : written;
}

function stands(view: DataView, at: number, [a, b]: readonly [number, number]): boolean {
  return view.getUint32(at) === a && view.getUint32(at + 4) === b;
}

function checksum(
  view: DataView,
  from: number,
  length: number,
  littleEndian: boolean,
  [a, b]: readonly [number, number],
): [number, number] {
  let s1 = a;
  let s2 = b;
  for (let at = from; at < from + length; at += 8) {
    s1 = (s1 + view.getUint32(at, littleEndian) + s2) >>> 0;
    s2 = (s2 + view.getUint32(at + 4, littleEndian) + s1) >>> 0;
  }
  return [s1, s2];
}
