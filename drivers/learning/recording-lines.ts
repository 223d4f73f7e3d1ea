import { z } from "zod";
import { Refusal } from "../../calibration/refusal.ts";
import { type Chunk, type Displayed, type Moment, phases, type Recording } from "./recording.ts";

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
