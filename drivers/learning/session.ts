import { type Message, message } from "../../calibration/message.ts";
import type { Moment, Phase } from "./recording.ts";

/** What the owner can be asked to do. */
type AskedPhase = Exclude<Phase, "unmarked">;

export interface Step {
  phase: AskedPhase;
  /** how long the step lasts at least, ms */
  leastMs: number;
  /** may be left out by the owner */
  optional: boolean;
}

/** The guided half minute. Still steps are long enough for a slow balance to settle in their first half. */
export const steps: readonly Step[] = [
  { phase: "empty", leastMs: 5000, optional: false },
  { phase: "putting-on", leastMs: 3000, optional: false },
  { phase: "loaded", leastMs: 6000, optional: false },
  { phase: "touched", leastMs: 4000, optional: false },
  { phase: "settled", leastMs: 6000, optional: false },
  { phase: "taking-off", leastMs: 3000, optional: false },
  { phase: "empty", leastMs: 5000, optional: false },
  { phase: "below-zero", leastMs: 5000, optional: true },
  { phase: "overloaded", leastMs: 3000, optional: true },
];

/** Bursts of bytes that a step wants to have heard; a slow balance makes it last longer. */
const wantedBursts = 4;
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

/** Where the guided half minute stands, for the owner. */
export interface SessionNow {
  /** what to do now, or that all is done */
  message: Message;
  phase: Phase | null;
  /** seconds left at the least, whole */
  secondsLeft: number;
  /** "step 3 of 9" in numbers */
  step: number;
  of: number;
  canSkip: boolean;
}

export function sessionNow(session: Session, atMs: number): SessionNow {
  const step = steps[session.step];
  const of = steps.length;
  if (!step)
    return { message: message("learn.step.done"), phase: null, secondsLeft: 0, step: of, of, canSkip: false };
  const asked = message(`learn.step.${step.phase}`);
  const times = Math.max(0, wantedBursts - session.bursts);
  return {
    message: session.onKey && times > 0 ? message("learn.on-key", { step: asked, times }) : asked,
    phase: step.phase,
    secondsLeft: Math.max(0, Math.ceil((step.leastMs - (atMs - session.stepSinceMs)) / 1000)),
    step: session.step + 1,
    of,
    canSkip: step.optional,
  };
}
