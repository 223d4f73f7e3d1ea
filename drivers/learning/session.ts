import { type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { Displayed, Moment, Phase } from "./recording.ts";

/** What the owner can be asked to do. */
type AskedPhase = Exclude<Phase, "unmarked">;

interface Step {
  phase: AskedPhase;
  /** the owner types what the display shows before going on */
  typed: boolean;
  /** may be left out by the owner */
  optional: boolean;
  /** lines that must have come in this step before it can be gone on from */
  lines: number;
}

/** What is done at the balance, one after the other; each step lasts until the owner goes on. */
export const steps: readonly Step[] = [
  { phase: "empty", typed: false, optional: false, lines: 2 },
  { phase: "putting-on", typed: false, optional: false, lines: 1 },
  { phase: "loaded", typed: true, optional: false, lines: 2 },
  { phase: "touched", typed: false, optional: true, lines: 1 },
  { phase: "at-rest", typed: true, optional: true, lines: 2 },
  { phase: "taking-off", typed: false, optional: false, lines: 1 },
  { phase: "empty", typed: false, optional: false, lines: 2 },
  { phase: "below-zero", typed: true, optional: true, lines: 2 },
];

/** A set-up that waits for the owner and for the line at each step. Nothing in it runs on a clock. */
export interface Session {
  /** which of the steps; equal to their number when all are done */
  step: number;
  /** bursts of bytes heard in this step */
  heard: number;
  moments: readonly Moment[];
  displayed: readonly Displayed[];
}

/** A new session. `atMs` is on the clock of the recording. */
export function beginSession(atMs: number): Session {
  return { step: 0, heard: 0, moments: [{ atMs, phase: steps[0]!.phase }], displayed: [] };
}

export const isFinished = ({ step }: Session) => step >= steps.length;

/** Some bytes came together. */
export function heard(session: Session): Session {
  return { ...session, heard: session.heard + 1 };
}

/**
 * The owner goes on. Throws Refusal while no line came in this step, and when what the display shows is not typed where it is
 * asked for.
 */
export function goOn(session: Session, atMs: number, typed: { text: string; unit: string }): Session {
  const step = steps[session.step];
  if (!step) return session;
  if (session.heard < step.lines)
    throw new Refusal("learn.no-line-yet", { lines: step.lines, heard: session.heard });
  if (!step.typed) return next(session, atMs);
  if (typed.text.trim() === "") throw new Refusal("learn.display-not-typed", {}, "text");
  if (typed.unit.trim() === "") throw new Refusal("learn.unit-not-typed", {}, "unit");
  return next({ ...session, displayed: [...session.displayed, { atMs, ...typed }] }, atMs + 1);
}

/** The owner leaves the step out, where it may be left out. */
export function leaveOut(session: Session, atMs: number): Session {
  const step = steps[session.step];
  if (!step?.optional) return session;
  // what came in it is kept, but nothing is said about what stood on the pan then
  const moments = session.moments.map((moment, i) =>
    i === session.moments.length - 1 ? { ...moment, phase: "unmarked" as const } : moment,
  );
  return next({ ...session, moments }, atMs);
}

function next(session: Session, atMs: number): Session {
  const step = session.step + 1;
  const following = steps[step];
  const base = { ...session, step, heard: 0 };
  return following ? { ...base, moments: [...session.moments, { atMs, phase: following.phase }] } : base;
}

/** Where the set-up stands, for the owner. */
export interface SessionNow {
  /** what to do now, or that all is done */
  message: Message;
  /** "step 3 of 8" in numbers */
  step: number;
  of: number;
  asksDisplayed: boolean;
  canLeaveOut: boolean;
  /** false until enough lines came in this step */
  lineCame: boolean;
}

export function sessionNow(session: Session): SessionNow {
  const step = steps[session.step];
  const of = steps.length;
  if (!step)
    return {
      message: message("learn.step.done"),
      step: of,
      of,
      asksDisplayed: false,
      canLeaveOut: false,
      lineCame: true,
    };
  return {
    message: message(`learn.step.${step.phase}`),
    step: session.step + 1,
    of,
    asksDisplayed: step.typed,
    canLeaveOut: step.optional,
    lineCame: session.heard >= step.lines,
  };
}
