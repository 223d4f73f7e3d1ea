import { median } from "../../calibration/median.ts";
import { atRest, movingPhases, type Observed, stillPhases } from "./recording.ts";

/** What the recording itself says about rest, line by line: from the phase and from the number. */
export type Truth = "rest" | "motion" | null;

/** Numbers further apart than this many times the balance's own unrest are in motion. */
const clearlyMoving = 8;
const windowMs = 500;

/** How far the number must go to be clearly in motion: many times the unrest of a quiet pan, or of its last place. */
export function clearStepOf(
  lines: readonly Observed[],
  values: readonly number[],
  lastPlace: number,
): number {
  const quiet = median(
    values.flatMap((value, i) =>
      i > 0 && atRest(lines[i]!) && atRest(lines[i - 1]!) && lines[i]!.at.index === lines[i - 1]!.at.index
        ? [Math.abs(value - values[i - 1]!)]
        : [],
    ),
  );
  return clearlyMoving * Math.max(lastPlace, Number.isNaN(quiet) ? 0 : quiet);
}

/**
 * Rest is the later half of a still phase; motion is a moving phase in which the number runs. Everything else, such
 * as the moment when the finger has just left the pan, is taken for neither.
 */
export function truths(lines: readonly Observed[], values: readonly number[], clearStep: number): Truth[] {
  return lines.map((line, i) => {
    // Only lines up to this one: a balance cannot know that it will be touched.
    const near = values.slice(Math.max(0, i - 40), i + 1).filter((_, k, past) => {
      const j = i - (past.length - 1 - k);
      return j >= i - 1 || line.atMs - lines[j]!.atMs <= windowMs;
    });
    const range = Math.max(...near) - Math.min(...near);
    if (atRest(line)) return range <= clearStep ? "rest" : null;
    const doing = movingPhases.includes(line.at.phase);
    return doing && range > clearStep ? "motion" : null;
  });
}

export interface Verdict {
  /** text of the mark to what it went with */
  means: Map<string, "steady" | "moving" | "unsure">;
  /** share of steps from line to line at rest at which the mark changes */
  changing: number;
  /** connection of marks and motion over all lines: 0 none, 1 full */
  connection: number;
  /** share of lines at rest, and of lines in motion, that the marks tell rightly */
  rest: number;
  motion: number;
}

export const fewestLines = 4;

/**
 * How well the marks at one place tell motion from rest. Each mark goes with the side on which it is more frequent;
 * the shares say how often that is right. Every still phase counts alone, so that a mark of zero is no mark of rest.
 */
export function judgeMarks(
  marks: readonly string[],
  truth: readonly Truth[],
  lines: readonly Observed[],
  values: readonly number[],
): Verdict {
  const count = (side: Truth, text?: string) =>
    truth.filter((t, i) => t === side && (text === undefined || marks[i] === text)).length;
  const [rests, motions] = [Math.max(1, count("rest")), Math.max(1, count("motion"))];
  const means: Verdict["means"] = new Map();
  for (const text of new Set(marks)) {
    const [r, m] = [count("rest", text) / rests, count("motion", text) / motions];
    const seen = count("rest", text) + count("motion", text);
    const share = r / (r + m || 1);
    means.set(text, seen < 3 || (share > 0.3 && share < 0.7) ? "unsure" : share >= 0.5 ? "steady" : "moving");
  }
  if (means.size > 2) {
    doubtThirdMarks(means, marks, truth, lines);
    doubtMarksOfZero(means, marks, values);
  }
  const right = (side: Truth, expected: string, phase?: number) => {
    const here = truth.flatMap((t, i) =>
      t === side && (phase === undefined || lines[i]!.at.index === phase) ? [i] : [],
    );
    return here.length < (phase === undefined ? 1 : 3)
      ? null
      : here.filter((i) => means.get(marks[i]!) === expected).length / here.length;
  };
  const stills = new Set(lines.filter(atRest).map((line) => line.at.index));
  const perPhase = [...stills].flatMap((phase) => right("rest", "steady", phase) ?? []);
  const steps = marks.flatMap((mark, i) =>
    truth[i] === "rest" && truth[i - 1] === "rest" ? [Number(mark !== marks[i - 1])] : [],
  );
  return {
    means,
    changing: steps.reduce((sum, step) => sum + step, 0) / Math.max(1, steps.length),
    rest: Math.min(right("rest", "steady") ?? 0, ...perPhase.map((share) => share + 0.1)),
    motion: right("motion", "moving") ?? 0,
    connection: (right("rest", "steady") ?? 0) + (right("motion", "moving") ?? 0) - 1,
  };
}

/**
 * Where there are more than two marks, one of them may say "nearly at rest". Such a mark comes more often right after
 * the motion than later. The commonest mark at rest is trusted, the others only when they come late and not in motion.
 */
function doubtThirdMarks(
  means: Verdict["means"],
  marks: readonly string[],
  truth: readonly Truth[],
  lines: readonly Observed[],
): void {
  const shareOf = (text: string, within: (i: number) => boolean) => {
    const here = marks.filter((_, i) => within(i));
    return here.filter((mark) => mark === text).length / Math.max(1, here.length);
  };
  const rest = (i: number) => truth[i] === "rest";
  const motion = (i: number) => truth[i] === "motion";
  const early = (i: number) =>
    stillPhases.includes(lines[i]!.at.phase) && !atRest(lines[i]!) && lines[i]!.at.index > 0;
  const steady = [...means].filter(([, meant]) => meant === "steady").map(([text]) => text);
  const commonest = steady.sort((a, b) => shareOf(b, rest) - shareOf(a, rest))[0];
  for (const text of steady.filter((mark) => mark !== commonest)) {
    const late = shareOf(text, rest);
    if (shareOf(text, motion) > 0.1 * late || shareOf(text, early) > late) means.set(text, "unsure");
  }
}

/** Share of the greatest number up to which a number is one near zero. */
const nearZero = 0.05;

/** Where other marks tell rest, one that came beside zero only may say zero, and that in motion as well. */
function doubtMarksOfZero(
  means: Verdict["means"],
  marks: readonly string[],
  values: readonly number[],
): void {
  const most = Math.max(...values.map(Math.abs));
  const steady = [...means].filter(([, meant]) => meant === "steady").map(([text]) => text);
  const ofZero = steady.filter((text) =>
    values.every((value, i) => marks[i] !== text || Math.abs(value) <= nearZero * most),
  );
  if (ofZero.length === steady.length) return;
  for (const text of ofZero) means.set(text, "unsure");
}
