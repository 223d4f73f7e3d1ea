import { longestLine } from "../line.ts";
import type { Ending } from "./profile.ts";

export interface CutLine {
  /** arrival of its last byte, ms */
  atMs: number;
  /** as received, line end and parity bits included */
  bytes: Uint8Array;
  /** parity bits taken off, line end taken off; frame characters kept */
  body: Uint8Array;
}

export interface ProfileCutter {
  /** whole lines that end within this chunk */
  push(bytes: Uint8Array, atMs: number): CutLine[];
  /** call when nothing came for a while: a line that only silence can end */
  idle(atMs: number): CutLine[];
  /** how long a silence ends a line, ms; null when silence means nothing */
  readonly silenceMs: number | null;
  reset(): void;
}

const fromHex = (text: string) => [...Buffer.from(text, "hex")];

/**
 * Cuts a stream into lines by what was learned. Drops what comes before the first line end unless told to keep it,
 * and throws away more than `longestLine` bytes without an end: that is noise.
 */
export function createProfileCutter(
  ending: Ending,
  mask: number,
  firstLine: "drop" | "keep" = "drop",
): ProfileCutter {
  const ends = ending.kind === "characters" ? fromHex(ending.hex) : [];
  const start = ending.kind === "frame" ? fromHex(ending.start)[0] : undefined;
  const close = ending.kind === "frame" ? fromHex(ending.end)[0] : undefined;
  let buffer: number[] = [];
  let partial = firstLine === "drop";
  let behind = -1;
  let lastMs = Number.NEGATIVE_INFINITY;

  function taken(atMs: number, endLength: number): CutLine[] {
    const bytes = Uint8Array.from(buffer);
    const keep = !partial && bytes.length > endLength;
    buffer = [];
    partial = false;
    behind = -1;
    if (!keep) return [];
    return [{ atMs, bytes, body: bytes.subarray(0, bytes.length - endLength).map((byte) => byte & mask) }];
  }

  function add(raw: number, atMs: number): CutLine[] {
    const byte = raw & mask;
    if (start !== undefined && byte === start && behind < 0) {
      // a frame opens: whatever stood before was torn or was the partial first one
      buffer = [];
      partial = false;
    }
    if (buffer.length >= longestLine) {
      buffer = [];
      behind = -1;
      partial = true;
    }
    buffer.push(raw);
    if (ending.kind === "frame") {
      if (behind >= 0) behind -= 1;
      else if (byte === close && (buffer[0]! & mask) === start) behind = ending.behind;
      return behind === 0 ? taken(atMs, 0) : [];
    }
    if (ending.kind === "length") return ofLength(ending.bytes, fromHex(ending.start), atMs);
    if (ending.kind === "any") return byte === 0x0d || byte === 0x0a ? taken(atMs, 1) : [];
    if (ending.kind === "silence" || buffer.length < ends.length) return [];
    const tail = buffer.slice(-ends.length);
    return tail.every((b, i) => (b & mask) === ends[i]) ? taken(atMs, ends.length) : [];
  }

  /** Frames of one length that begin alike; what does not begin so is thrown away. */
  function ofLength(length: number, start: readonly number[], atMs: number): CutLine[] {
    while (buffer.length > 0 && start.some((byte, i) => i < buffer.length && (buffer[i]! & mask) !== byte))
      buffer.shift();
    partial = false;
    return buffer.length === length ? taken(atMs, 0) : [];
  }

  const silenceMs = ending.kind === "silence" ? ending.ms : null;
  return {
    silenceMs,
    push(bytes, atMs) {
      const lines =
        silenceMs !== null && buffer.length > 0 && atMs - lastMs >= silenceMs ? taken(lastMs, 0) : [];
      lastMs = atMs;
      for (const byte of bytes) lines.push(...add(byte, atMs));
      return lines;
    },
    idle(atMs) {
      return silenceMs !== null && buffer.length > 0 && atMs - lastMs >= silenceMs ? taken(lastMs, 0) : [];
    },
    reset() {
      buffer = [];
      partial = firstLine === "drop";
      behind = -1;
    },
  };
}
