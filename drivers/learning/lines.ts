import { escapeBytes } from "../escape.ts";
import { type Block, blockOf } from "./blocks.ts";
import { checkOf, framedText, parityOf, textOf, withoutCheck } from "./bytes.ts";
import { createProfileCutter } from "./cutter.ts";
import { endingOf } from "./line-end.ts";
import type { Observed } from "./observed.ts";
import type { Check, Ending, Parity } from "./profile.ts";
import { phaseAt, type Recording } from "./recording.ts";

/** A recording cut into lines, with everything about its bytes that had to be known for that. */
export interface Lines {
  parity: Parity;
  ending: Ending;
  check: Check | null;
  block: Block;
  /** whole lines, one by one, in order */
  single: Observed[];
  /** what makes one reading each: lines, or blocks joined by \n */
  texts: Observed[];
  /** lines whose check byte does not fit */
  misfits: number;
}

export type NoLines = { because: string };

const leastPrintable = 0.6;

/** Cuts the recording into lines, or says why its bytes are no lines. `ending` is given where the owner knows it. */
export function linesOf(recording: Recording, given?: Ending): Lines | NoLines {
  const all = Uint8Array.from(recording.chunks.flatMap((chunk) => [...chunk.bytes]));
  if (all.length === 0)
    return {
      because:
        "Nothing came from the balance. Check that it is on and connected and that it is set to send; where it sends only on a key, press its print key in every step.",
    };
  const parity = parityOf(all);
  const mask = parity === "none" ? 0xff : 0x7f;
  const printable = all.filter((byte) => (byte & mask) >= 0x20 && (byte & mask) < 0x7f).length;
  if (printable < leastPrintable * all.length)
    return {
      because: `${all.length} bytes came and only ${printable} of them are characters of text. That is what a wrong speed looks like: try another speed, then learn again.`,
    };
  const ending = given ?? endingOf(recording.chunks, mask);
  if (!ending)
    return {
      because: `${all.length} bytes came, but no end of a line can be seen in them: no character that comes again at every end, and no pause. Set the balance to send a line end, then learn again.`,
    };
  const cutter = createProfileCutter(ending, mask);
  const endMs = recording.chunks.at(-1)!.atMs;
  const cut = [
    ...recording.chunks.flatMap((chunk) => cutter.push(chunk.bytes, chunk.atMs)),
    ...cutter.idle(endMs + 10_000),
  ];
  const check = checkOf(cut.map(({ body }) => body));
  const text = ending.kind === "frame" ? framedText : textOf;
  let misfits = 0;
  const single = cut.map((line): Observed => {
    const checked = check ? withoutCheck(line.body, check) : line.body;
    if (!checked) misfits += 1;
    const at = phaseAt(recording.moments, endMs, line.atMs);
    const shown = escapeBytes(line.bytes.map((byte) => byte & mask));
    return { atMs: line.atMs, bytes: line.bytes, shown, text: text(checked ?? line.body), at };
  });
  const blocks = blockOf(single);
  return {
    parity,
    ending,
    check,
    block: blocks?.block ?? { lines: 1, sure: true },
    single,
    texts: blocks?.texts ?? single,
    misfits,
  };
}
