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

export function isPhase(name: string): name is Phase {
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
