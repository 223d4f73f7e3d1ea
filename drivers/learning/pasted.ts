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
