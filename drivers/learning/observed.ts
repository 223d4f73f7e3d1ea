import type { PhaseAt } from "./recording.ts";
import { stillPhases } from "./recording.ts";

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
export function skeleton(text: string): string {
  return text
    .replace(/\d+/g, "9")
    .replace(/[+\-\u2212]/g, "")
    .replace(/ +/g, " ")
    .trim();
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** How often each key occurs. */
export function tally(keys: Iterable<string>): Map<string, number> {
  const counts = new Map<string, number>();
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  return counts;
}
