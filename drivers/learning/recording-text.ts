import { z } from "zod";
import { Refusal } from "../../calibration/refusal.ts";
import {
  type Chunk,
  type Displayed,
  isPhase,
  type Moment,
  type Phase,
  phases,
  type Recording,
} from "./recording.ts";

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
    const { at_ms: atMs, ...told } = read.data;
    if ("hex" in told) chunks.push({ atMs, bytes: Uint8Array.from(Buffer.from(told.hex, "hex")) });
    else if ("step" in told) moments.push({ atMs, phase: told.step });
    else displayed.push({ atMs, ...told.displayed });
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
