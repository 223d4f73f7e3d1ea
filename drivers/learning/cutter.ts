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

/** What each byte that was added means to the line that is being gathered. */
interface Rule {
  /** a line begins with this byte, whatever stood before it */
  begins?: (byte: number, buffer: readonly number[]) => boolean;
  /** how many bytes of its end the whole line has now; null while it is not whole */
  ends(buffer: number[], bare: (at: number) => number): number | null;
}

/**
 * Cuts a stream into lines by what was learned. Drops what comes before the first line end unless told to keep it,
 * and throws away more than `longestLine` bytes without an end: that is noise.
 */
export function createProfileCutter(
  ending: Ending,
  mask: number,
  firstLine: "drop" | "keep" = "drop",
): ProfileCutter {
  const rule = ruleOf(ending);
  const silenceMs = ending.kind === "silence" ? ending.ms : null;
  // a frame of known length is whole or is thrown away
  const dropsFirst = firstLine === "drop" && ending.kind !== "length";
  let buffer: number[] = [];
  let partial = dropsFirst;
  let lastMs = Number.NEGATIVE_INFINITY;

  function taken(atMs: number, endLength: number): CutLine[] {
    const bytes = Uint8Array.from(buffer);
    const keep = !partial && bytes.length > endLength;
    buffer = [];
    partial = false;
    if (!keep) return [];
    return [{ atMs, bytes, body: bytes.subarray(0, bytes.length - endLength).map((byte) => byte & mask) }];
  }

  function add(raw: number, atMs: number): CutLine[] {
    const begins = rule.begins?.(raw & mask, buffer) ?? false;
    if (begins || buffer.length >= longestLine) {
      buffer = [];
      partial = !begins;
    }
    buffer.push(raw);
    const end = rule.ends(buffer, (at) => buffer.at(at)! & mask);
    return end === null ? [] : taken(atMs, end);
  }

  const silent = (atMs: number) => silenceMs !== null && buffer.length > 0 && atMs - lastMs >= silenceMs;
  return {
    silenceMs,
    push(bytes, atMs) {
      const lines = silent(atMs) ? taken(lastMs, 0) : [];
      lastMs = atMs;
      for (const byte of bytes) lines.push(...add(byte, atMs));
      return lines;
    },
    idle: (atMs) => (silent(atMs) ? taken(lastMs, 0) : []),
    reset() {
      buffer = [];
      partial = dropsFirst;
    },
  };
}

function ruleOf(ending: Ending): Rule {
  switch (ending.kind) {
    case "characters": {
      const end = fromHex(ending.hex);
      return {
        ends: (buffer, bare) =>
          buffer.length >= end.length && end.every((byte, i) => bare(i - end.length) === byte)
            ? end.length
            : null,
      };
    }
    case "frame":
      return frameRule(ending);
    case "length":
      return lengthRule(ending);
    case "any":
      return { ends: (_, bare) => ([0x0d, 0x0a].includes(bare(-1)) ? 1 : null) };
    case "silence":
      return { ends: () => null };
  }
}

/** A frame opens wherever its first byte comes; what stood before was torn or was the partial first one. */
function frameRule({ start, end, behind }: Extract<Ending, { kind: "frame" }>): Rule {
  const [open, close] = [fromHex(start)[0], fromHex(end)[0]];
  /** bytes still to come behind the closing one; -1 before it */
  let left = -1;
  return {
    begins: (byte, buffer) => byte === open && (left < 0 || buffer.length === 0),
    ends(buffer, bare) {
      if (buffer.length === 1) left = -1;
      if (left >= 0) left -= 1;
      else if (bare(-1) === close && bare(0) === open) left = behind;
      if (left !== 0) return null;
      left = -1;
      return 0;
    },
  };
}

/** Frames of one length that begin alike; what does not begin so is thrown away. */
function lengthRule({ bytes, start }: Extract<Ending, { kind: "length" }>): Rule {
  const first = fromHex(start);
  return {
    ends(buffer, bare) {
      while (buffer.length > 0 && first.some((byte, i) => i < buffer.length && bare(i) !== byte))
        buffer.shift();
      return buffer.length === bytes ? 0 : null;
    },
  };
}
