import { type Message, message } from "../../calibration/message.ts";
import { escapeBytes } from "../escape.ts";
import { type BinaryNumber, bodyText, framesOf } from "./binary.ts";
import { type Block, blockOf } from "./blocks.ts";
import { parityOf } from "./bytes.ts";
import { checkOf, withoutCheck } from "./check.ts";
import { createProfileCutter } from "./cutter.ts";
import { endingOf } from "./line-end.ts";
import type { Check, Ending, Parity } from "./profile.ts";
import type { Observed } from "./recording.ts";
import { phaseAt, type Recording } from "./recording.ts";

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
