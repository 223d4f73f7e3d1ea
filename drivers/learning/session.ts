import type { Moment, Phase } from "./recording.ts";

export interface Step {
  phase: Phase;
  /** what the owner is to do now */
  says: string;
  /** how long the step lasts at least, ms */
  leastMs: number;
  /** may be left out by the owner */
  optional: boolean;
}

/** The guided half minute. Still steps are long enough for a slow balance to settle in their first half. */
export const steps: readonly Step[] = [
  {
    phase: "empty",
    says: "Leave the pan empty and do not touch the bench.",
    leastMs: 5000,
    optional: false,
  },
  {
    phase: "putting-on",
    says: "Put a weight on, one that needs most of the digits of the display, and jog it a little.",
    leastMs: 3000,
    optional: false,
  },
  { phase: "loaded", says: "Hands off. Let the weight lie still.", leastMs: 6000, optional: false },
  {
    phase: "touched",
    says: "Touch the pan lightly with a finger and keep pressing a little more and a little less.",
    leastMs: 4000,
    optional: false,
  },
  { phase: "settled", says: "Hands off again. Let it settle.", leastMs: 6000, optional: false },
  { phase: "taking-off", says: "Take the weight off.", leastMs: 3000, optional: false },
  { phase: "empty", says: "Leave the pan empty and do not touch the bench.", leastMs: 5000, optional: false },
  {
    phase: "below-zero",
    says: "If you like: with the weight on press the balance's own zero key, take the weight off and wait. It shows how a minus is written. Otherwise leave this out.",
    leastMs: 5000,
    optional: true,
  },
  {
    phase: "overloaded",
    says: "If you like: press the pan carefully just beyond its range, as its manual allows, and hold. It shows what is sent then. Otherwise leave this out.",
    leastMs: 3000,
    optional: true,
  },
];

/** Bursts of bytes that a step wants to have heard; a slow balance makes it last longer. */
export const wantedBursts = 4;
/** How long a step waits for them, as a multiple of its least duration. */
const mostPatience = 3;
/** No byte in the first step for so long: the balance sends on a key only, ms. */
const keyedAfterMs = 4000;

export interface Session {
  /** which of the steps; equal to their number when all are done */
  step: number;
  stepSinceMs: number;
  /** bursts heard in this step */
  bursts: number;
  /** true when nothing came by itself, so that the owner has to press the print key in every step */
  onKey: boolean;
  moments: readonly Moment[];
  finished: boolean;
}

export type SessionInput =
  /** time has passed */
  | { kind: "tick"; atMs: number }
  /** some bytes came together */
  | { kind: "bytes"; atMs: number }
  /** the owner leaves out an optional step */
  | { kind: "skip"; atMs: number };

/** A new session. `atMs` is on the clock of the recording. */
export function beginSession(atMs: number): Session {
  return {
    step: 0,
    stepSinceMs: atMs,
    bursts: 0,
    onKey: false,
    moments: [{ atMs, phase: steps[0]!.phase }],
    finished: false,
  };
}

/** The session after something happened. Pure; a skip of a step that is not optional and a late input change nothing. */
export function advance(session: Session, input: SessionInput): Session {
  const step = steps[session.step];
  if (!step || session.finished) return session;
  if (input.kind === "skip") return step.optional ? next(session, input.atMs) : session;
  const heard = input.kind === "bytes" ? { ...session, bursts: session.bursts + 1 } : session;
  const spentMs = input.atMs - session.stepSinceMs;
  const keyed =
    heard.onKey || (heard.step === 0 && heard.bursts === 0 && spentMs >= keyedAfterMs) ? true : heard.onKey;
  const now = keyed === heard.onKey ? heard : { ...heard, onKey: keyed };
  const enough = now.bursts >= wantedBursts;
  if (spentMs < step.leastMs) return now;
  // On a key the step lasts until the key was pressed often enough; the owner sees how often is left.
  if (enough || (!now.onKey && spentMs >= mostPatience * step.leastMs)) return next(now, input.atMs);
  return now;
}

function next(session: Session, atMs: number): Session {
  const step = session.step + 1;
  const following = steps[step];
  const base = { ...session, step, stepSinceMs: atMs, bursts: 0, finished: following === undefined };
  return following ? { ...base, moments: [...session.moments, { atMs, phase: following.phase }] } : base;
}

export interface Told {
  /** what to do now, or that all is done */
  says: string;
  phase: Phase | null;
  /** seconds left at the least, whole */
  secondsLeft: number;
  /** "step 3 of 9" in numbers */
  step: number;
  of: number;
  canSkip: boolean;
}

/** What the page tells the owner at this moment. */
export function tellNow(session: Session, atMs: number): Told {
  const step = steps[session.step];
  const of = steps.length;
  if (!step)
    return {
      says: "Done. The lines are read now.",
      phase: null,
      secondsLeft: 0,
      step: of,
      of,
      canSkip: false,
    };
  const left = Math.max(0, wantedBursts - session.bursts);
  const key =
    session.onKey && left > 0
      ? ` Nothing comes by itself: press the print key of the balance ${left} time${left === 1 ? "" : "s"}, about a second apart.`
      : "";
  return {
    says: step.says + key,
    phase: step.phase,
    secondsLeft: Math.max(0, Math.ceil((step.leastMs - (atMs - session.stepSinceMs)) / 1000)),
    step: session.step + 1,
    of,
    canSkip: step.optional,
  };
}
