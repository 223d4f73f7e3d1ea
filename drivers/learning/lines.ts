import { type Message, message } from "../../calibration/message.ts";
import { escapeBytes } from "../escape.ts";
import { type Block, blockOf } from "./blocks.ts";
import { type BinaryNumber, bodyText, framesOf, parityOf } from "./bytes.ts";
import { checkOf, withoutCheck } from "./check.ts";
import { createProfileCutter } from "./cutter.ts";
import type { Check, Ending, Parity } from "./profile.ts";
import { type Chunk, type Observed, phaseAt, type Recording } from "./recording.ts";

/** A recording cut into lines, with everything about its bytes that had to be known for that. */
export interface Lines {
  parity: Parity;
  ending: Ending;
  check: Check | null;
  /** the number of a frame of bytes; null where lines are text */
  binary: BinaryNumber | null;
  block: Block;
  /** whole lines, one by one, in order */
  single: Observed[];
  /** what makes one reading each: lines, or blocks joined by \n */
  texts: Observed[];
  /** lines whose check byte does not fit */
  misfits: number;
}

export type NoLines = { because: Message };

/** Frames of bytes that are no text; which of their bytes are the number is not known yet. */
export type Frames = { frames: Extract<Ending, { kind: "length" }> };

const leastPrintable = 0.6;

/** Cuts the recording into lines, or says why its bytes are no lines. `ending` is given where the owner knows it. */
export function linesOf(recording: Recording, given?: Ending): Lines | NoLines | Frames {
  const all = Uint8Array.from(recording.chunks.flatMap((chunk) => [...chunk.bytes]));
  if (all.length === 0) return { because: message("learn.failed.nothing-came") };
  const parity = parityOf(all);
  const mask = parity === "none" ? 0xff : 0x7f;
  const printable = all.filter((byte) => (byte & mask) >= 0x20 && (byte & mask) < 0x7f).length;
  const frames = printable < leastPrintable * all.length ? framesOf(recording.chunks) : null;
  if (frames) return { frames };
  if (printable < leastPrintable * all.length)
    return { because: message("learn.failed.few-characters", { bytes: all.length, printable }) };
  const ending = given ?? endingOf(recording.chunks, mask);
  if (!ending) return { because: message("learn.failed.no-line-end", { bytes: all.length }) };
  return linesCut(recording, { parity, ending, binary: null });
}

/** Cuts the recording into lines of this kind. */
export function linesCut(
  recording: Recording,
  { parity, ending, binary }: Pick<Lines, "parity" | "ending" | "binary">,
): Lines {
  const mask = parity === "none" ? 0xff : 0x7f;
  const cutter = createProfileCutter(ending, mask);
  const endMs = recording.chunks.at(-1)!.atMs;
  const cut = [
    ...recording.chunks.flatMap((chunk) => cutter.push(chunk.bytes, chunk.atMs)),
    ...cutter.idle(endMs + 10_000),
  ];
  const check = checkOf(cut.map(({ body }) => body));
  let misfits = 0;
  const single = cut.map((line): Observed => {
    const checked = check ? withoutCheck(line.body, check) : line.body;
    if (!checked) misfits += 1;
    const at = phaseAt(recording.moments, endMs, line.atMs);
    const shown = escapeBytes(line.bytes.map((byte) => byte & mask));
    return {
      atMs: line.atMs,
      bytes: line.bytes,
      shown,
      text: bodyText(checked ?? line.body, { ending, binary }),
      at,
    };
  });
  const blocks = blockOf(single);
  return {
    parity,
    ending,
    check,
    binary,
    block: blocks?.block ?? { lines: 1, sure: true },
    single,
    texts: blocks?.texts ?? single,
    misfits,
  };
}

const STX = 0x02;
const ETX = 0x03;

/** How the stream falls into lines, or null when no end can be found. `mask` takes the parity bit off. */
function endingOf(chunks: readonly Chunk[], mask: number): Ending | null {
  const stream = chunks.flatMap((chunk) => [...chunk.bytes].map((byte) => byte & mask));
  return frameOf(stream) ?? charactersOf(stream) ?? silenceOf(chunks, mask);
}

/** STX … ETX with a fixed count of bytes behind it. */
function frameOf(stream: readonly number[]): Ending | null {
  const opens = stream.filter((byte) => byte === STX).length;
  const closes = stream.filter((byte) => byte === ETX).length;
  // A check byte behind the frame may itself look like an STX or an ETX.
  if (opens < 3 || closes < 3 || closes < 0.4 * opens) return null;
  for (let behind = 0; behind <= 6; behind += 1) {
    let whole = 0;
    let torn = 0;
    let at = stream.indexOf(STX);
    while (at >= 0) {
      const close = stream.indexOf(ETX, at);
      if (close < 0 || close + behind + 1 >= stream.length) break;
      const next = close + behind + 1;
      if (stream[next] === STX) {
        whole += 1;
        at = next;
      } else {
        torn += 1;
        at = stream.indexOf(STX, at + 1);
      }
    }
    if (whole >= 3 && whole >= 6 * torn) return { kind: "frame", start: "02", end: "03", behind };
  }
  return null;
}

/** The run of control characters that ends lines: the shortest of the usual runs, cut where a frame opens. */
function charactersOf(stream: readonly number[]): Ending | null {
  const runs = new Map<string, number>();
  let run: number[] = [];
  for (const byte of [...stream, 0x20]) {
    if (byte < 0x20 && byte !== 0x09 && byte !== STX && byte !== 0x01) {
      run.push(byte);
      continue;
    }
    if (run.length > 0) {
      const hex = Buffer.from(lineEndIn(run)).toString("hex");
      runs.set(hex, (runs.get(hex) ?? 0) + 1);
    }
    run = [];
  }
  const most = Math.max(0, ...runs.values());
  if (most < 3) return null;
  const often = [...runs].filter(([, count]) => count >= 0.3 * most).map(([hex]) => hex);
  // Other control characters may stand anywhere in a line, as those that colour a screen do.
  const plain = often.filter((hex) => /^(..)*?0[ad]/.test(hex));
  const usual = plain.length > 0 ? plain : often;
  const shortest = usual.sort((a, b) => a.length - b.length)[0];
  return shortest === undefined ? null : { kind: "characters", hex: shortest };
}

/** What follows CR or LF begins the next line, such as the codes that colour a screen. */
function lineEndIn(run: readonly number[]): readonly number[] {
  const last = run.findLastIndex((byte) => byte === 0x0d || byte === 0x0a);
  return last < 0 ? run : run.slice(0, last + 1);
}

const silences = [20, 40, 80, 160];

/** No end character at all: lines end where the stream pauses. The pause that gives the most regular lines is taken. */
function silenceOf(chunks: readonly Chunk[], mask: number): Ending | null {
  let best: { ms: number; share: number } | null = null;
  for (const ms of silences) {
    const cutter = createProfileCutter({ kind: "silence", ms }, mask);
    const lines = chunks.flatMap((chunk) => cutter.push(chunk.bytes, chunk.atMs));
    if (lines.length < 4) continue;
    const counts = new Map<number, number>();
    for (const { body } of lines) counts.set(body.length, (counts.get(body.length) ?? 0) + 1);
    const common = [...counts.values()].sort((a, b) => b - a).slice(0, 3);
    const share = common.reduce((a, b) => a + b, 0) / lines.length;
    if (best === null || share > best.share + 0.02) best = { ms, share };
  }
  return best && best.share > 0.7 ? { kind: "silence", ms: best.ms } : null;
}
