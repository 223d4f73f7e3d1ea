import { eighthBit, withoutEighthBit } from "./parity.ts";

const CR = 0x0d;
const LF = 0x0a;
const STX = 0x02;
const ETX = 0x03;

/** Longest line taken for a line. A print-out line has 20 to 40 characters; noise has no end. */
export const longestLine = 200;

/** One whole line, cut out of the stream. */
export interface CutLine {
  /** as received, line end included */
  bytes: Uint8Array;
  /** as a shape reads it: parity bit, line end, NUL, XON and XOFF removed; frame characters kept */
  text: string;
}

export interface LineCutter {
  push(chunk: Uint8Array): void;
  /** call when nothing has come for `idleMs` or `usualIdleMs`: ends a line that waited to see whether LF follows its CR */
  idle(): void;
  /** true while a line waits for `idle()` */
  readonly waiting: boolean;
  /** how long it waits, ms, where that is not the usual */
  readonly idleMs?: number;
  /** forget everything, as after reopening: the next line may again be a partial one */
  reset(): void;
}

export interface LineCutterOptions {
  onLine(line: CutLine): void;
  /** noise: so many bytes without a line end, thrown away */
  onTooLong(bytes: Uint8Array): void;
  /** what to do with what comes before the first line end: "drop" on a line already talking, "keep" in a file */
  firstLine?: "drop" | "keep";
  /** silence that ends a line by itself; only for balances that send no line end */
  end?: "auto" | "idle";
}

/** How long a CR waits for its LF, ms: bridges of serial to USB hold bytes back for up to 16 ms [common practice]. */
export const usualIdleMs = 30;

/**
 * Cuts a stream of bytes at CR, LF, CR LF, LF CR and at ETX with the check bytes behind it, however the
 * stream is chopped. Drops the first partial line, caps the length, never joins across `reset()`.
 */
export function createLineCutter(options: LineCutterOptions): LineCutter {
  const { onLine, onTooLong, firstLine = "drop", end = "auto" } = options;
  let buffer: number[] = [];
  let tooLong = false;
  let partial = firstLine === "drop";
  // "text": inside a line; "cr": CR seen, LF may follow; "etx": frame closed, check bytes may follow
  let state: "text" | "cr" | "etx" = "text";

  function finish(): void {
    const bytes = Uint8Array.from(buffer);
    const dropped = partial || tooLong;
    if (tooLong && !partial) onTooLong(bytes);
    buffer = [];
    state = "text";
    partial = false;
    tooLong = false;
    if (dropped) return;
    const text = lineText(bytes);
    if (text.trim() !== "") onLine({ bytes, text });
  }

  function add(byte: number): void {
    const code = endCode(byte, buffer);
    if (state === "cr") {
      if (code === LF) buffer.push(byte);
      finish();
      if (code === LF) return;
    } else if (state === "etx" && code === STX) finish();
    // A frame that opens while the first, partial line is still being dropped is a whole line.
    if (code === STX && partial) {
      partial = false;
      buffer = [];
    }
    if (buffer.length < longestLine) buffer.push(byte);
    else tooLong = true;
    if (code === LF) finish();
    else if (code === CR) state = "cr";
    else if (code === ETX) state = "etx";
  }

  const isWaiting = () => state !== "text" || (end === "idle" && buffer.length > 0);

  return {
    push(chunk) {
      for (const byte of chunk) add(byte);
    },
    idle() {
      if (isWaiting()) finish();
    },
    get waiting() {
      return isWaiting();
    },
    reset() {
      buffer = [];
      state = "text";
      tooLong = false;
      partial = firstLine === "drop";
    },
  };
}

/** The byte as a line end, looking through a parity bit, but not inside a character of several bytes. */
function endCode(byte: number, before: readonly number[]): number {
  if (byte < 0x80) return byte;
  const code = byte & 0x7f;
  if (code !== CR && code !== LF && code !== ETX && code !== STX) return byte;
  return utf8(Uint8Array.from([...before, byte]), true) === null ? code : byte;
}

function utf8(bytes: Uint8Array, open: boolean): string | null {
  // Quick no for the usual case: a lone high byte is never UTF-8, it needs a lead and a continuation.
  const lead = bytes.findIndex((byte) => byte >= 0x80);
  if (lead < 0 || bytes[lead]! < 0xc2 || (!open && (bytes[lead + 1] ?? 0) < 0x80)) return null;
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes, { stream: open });
  } catch {
    return null;
  }
}

/** Bytes of one line as a shape reads them. Never throws; what is no text stays as odd characters no shape knows. */
export function lineText(bytes: Uint8Array): string {
  const kind = eighthBit(bytes);
  const plain = kind === "unused" || kind === "data" ? bytes : withoutEighthBit(bytes);
  const decoded = kind === "data" ? utf8(plain, false) : null;
  return (
    (decoded ?? Buffer.from(plain).toString("latin1"))
      // NUL pads at either end, but inside a line it may stand for a lost character; XON and XOFF are flow control that
      // slipped through, U+FEFF marks the start of a text stream.
      .replace(/[\x11\x13\uFEFF]/g, "")
      .replace(/^\0+|\0+(?=[\r\n]*$)/g, "")
      .replace(/\u00A0/g, " ")
      .replace(/[\r\n]+$/, "")
      .replace(/^[\r\n]+/, "")
  );
}
