import { z } from "zod";
import { type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";

/**
 * What stands on the pan and what happens to it, as the owner was asked to do it. A phase lasts until the next moment.
 * Still: "empty", "loaded", "at-rest". Moving: "putting-on", "touched" and "taking-off". "below-zero": a weight
 * was tared and lifted, the display shows less than zero; "unmarked": nothing is said about the pan.
 */
export const phases = [
  "empty",
  "putting-on",
  "loaded",
  "touched",
  "at-rest",
  "taking-off",
  "below-zero",
  "unmarked",
] as const;

export type Phase = (typeof phases)[number];

function isPhase(name: string): name is Phase {
  return phases.some((phase) => phase === name);
}

export interface Chunk {
  /** arrival on a clock that never jumps, ms */
  atMs: number;
  bytes: Uint8Array;
}

export interface Moment {
  /** when the phase began, same clock as the chunks, ms */
  atMs: number;
  phase: Phase;
}

/** What the owner read off the display, as they wrote it. */
export interface Displayed {
  atMs: number;
  text: string;
  unit: string;
}

/** The original observation: bytes with their arrival times, what the owner did when, and what they read off. */
export interface Recording {
  chunks: readonly Chunk[];
  moments: readonly Moment[];
  displayed?: readonly Displayed[];
}

export interface PhaseAt {
  phase: Phase;
  /** 0 at its beginning, 1 at its end */
  through: number;
  /** which of the moments began it; -1 before the first */
  index: number;
}

export const stillPhases: readonly Phase[] = ["empty", "loaded", "at-rest"];
export const movingPhases: readonly Phase[] = ["putting-on", "touched", "taking-off"];

/** The phase at a time, and how far it has gone. Before the first moment nothing is known. */
export function phaseAt(moments: readonly Moment[], endMs: number, atMs: number): PhaseAt {
  const index = moments.findLastIndex((moment) => moment.atMs <= atMs);
  const moment = moments[index];
  if (!moment) return { phase: "unmarked", through: 0, index: -1 };
  const until = moments[index + 1]?.atMs ?? Math.max(endMs, moment.atMs + 1);
  return { phase: moment.phase, through: Math.min(1, (atMs - moment.atMs) / (until - moment.atMs)), index };
}

/** One line, or one block of lines, with what happened on the pan when it came. */
export interface Observed {
  atMs: number;
  /** as received, line end and parity bits included */
  bytes: Uint8Array;
  /** the same for people: parity taken off, control characters escaped */
  shown: string;
  /** line end, parity and check taken off; the lines of a block joined by \n */
  text: string;
  at: PhaseAt;
}

/** A still phase begins with settling; only its later half is taken for rest. */
const settledAfter = 0.5;

/** True where nothing should move any more. */
export function atRest({ at }: Observed): boolean {
  return stillPhases.includes(at.phase) && at.through >= settledAfter;
}

/** A line with digits, signs and the width of gaps taken out: equal for lines that differ by their number only. */
export function lineKind(text: string): string {
  return text
    .replace(/\d+/g, "9")
    .replace(/[+\-\u2212]/g, "")
    .replace(/ +/g, " ")
    .trim();
}

/** Two lines as they came, for people. */
export function sampleLines(lines: readonly Observed[]): Message[] {
  const different = [...new Set(lines.map(({ shown }) => shown))];
  return different.slice(0, 2).map((mark) => message("learn.mark", { mark }));
}

/** Steps a recording in a file may name. */
const steps = phases.filter((phase) => phase !== "unmarked");
const example = '{"at_ms":12,"hex":"2b33"}';
const at_ms = z.number().nonnegative();
const line = z.union([
  z.strictObject({ at_ms, step: z.enum(steps) }),
  z.strictObject({ at_ms, hex: z.string().regex(/^([0-9a-fA-F]{2})*$/) }),
  z.strictObject({ at_ms, displayed: z.strictObject({ text: z.string(), unit: z.string() }) }),
]);

/**
 * A recording from JSON Lines: `{"at_ms":0,"step":"empty"}`, `{"at_ms":12,"hex":"2b33"}` (bytes as they came) and
 * `{"at_ms":5200,"displayed":{"text":"31.1035","unit":"g"}}`. Lines need not stand in the order of their times.
 * Throws Refusal naming the first line that is none of these, and when no line carries bytes.
 */
export function recordingFromLines(text: string): Required<Recording> {
  const chunks: Chunk[] = [];
  const moments: Moment[] = [];
  const displayed: Displayed[] = [];
  for (const [index, written] of text.split(/\r?\n/).entries()) {
    if (written.trim() === "") continue;
    const read = line.safeParse(json(written));
    if (!read.success)
      throw new Refusal("recording.line", { line: index + 1, written: written.slice(0, 80), steps });
    const { at_ms: atMs, ...content } = read.data;
    if ("hex" in content) chunks.push({ atMs, bytes: Uint8Array.from(Buffer.from(content.hex, "hex")) });
    else if ("step" in content) moments.push({ atMs, phase: content.step });
    else displayed.push({ atMs, ...content.displayed });
  }
  if (chunks.length === 0) throw new Refusal("recording.no-bytes", { example });
  const inTime = (a: { atMs: number }, b: { atMs: number }) => a.atMs - b.atMs;
  return {
    chunks: chunks.sort(inTime),
    moments: moments.sort(inTime),
    displayed: displayed.sort(inTime),
  };
}

function json(written: string): unknown {
  try {
    return JSON.parse(written);
  } catch {
    return undefined;
  }
}

/** Pasted lines carry no times; this many milliseconds are put between them so that their order is kept. */
const pastedLineMs = 200;

/**
 * A recording from text that was copied out of some other window, with the moments marked by hand: a line that
 * begins with `#` names the phase that begins there, as `# loaded`, or tells what the display showed then, as
 * `# displayed 31.1035 g`. Every other line is a line of the balance. Throws Refusal when a mark is neither, or when no phase
 * is marked at all.
 */
export function recordingFromText(text: string): Recording {
  const chunks: Chunk[] = [];
  const moments: Moment[] = [];
  const displayed: Displayed[] = [];
  let atMs = 0;
  for (const line of text.split(/\r\n|\n\r|\r|\n/)) {
    const [, number, unit] = /^#\s*displayed\s+(.*\d\S*)\s*([^\d\s]+)\s*$/.exec(line) ?? [];
    if (number !== undefined && unit !== undefined) {
      displayed.push({ atMs: Math.max(0, atMs - pastedLineMs / 2), text: number, unit });
      continue;
    }
    if (line.startsWith("#")) {
      moments.push({ atMs, phase: named(line.slice(1).trim()) });
      continue;
    }
    if (line.trim() === "") continue;
    chunks.push({ atMs: atMs + 1, bytes: new TextEncoder().encode(`${line}\n`) });
    atMs += pastedLineMs;
  }
  if (moments.length === 0) throw new Refusal("learn.recording.unmarked", { right: marks() }, "text");
  return { chunks, moments, displayed };
}

function named(name: string): Phase {
  if (isPhase(name)) return name;
  throw new Refusal("learn.recording.step", { step: name, right: marks() }, "text");
}

const marks = () => phases.map((phase) => `# ${phase}`);
