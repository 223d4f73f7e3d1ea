import { grammar } from "./grammar.ts";
import { clearStepOf, fewestLines, judgeMarks, type Truth, truths, type Verdict } from "./motion.ts";
import { type MarkedLines, meansSomethingElse } from "./other-meanings.ts";
import type { Placed } from "./places.ts";
import type { Part } from "./profile.ts";

export interface MotionFound {
  parts: Part[];
  sure: boolean;
  /** marks that go with rest and with motion, in order of the line; empty when the line does not tell */
  steady: string[];
  moving: string[];
  /** marks of the same places that came too seldom to say */
  unsure: string[];
  restLines: number;
  motionLines: number;
  /** lines of several kinds take turns at rest: where the first of their marks stands, and a line with each; null where none do */
  turns: { slot: number; kinds: { mark: string; line: string }[] } | null;
}

/** A nervous balance says now and then that it moves when it rests; while things move its mark may lag behind. */
const needed = { rest: 0.6, motion: 0.8, together: 1.55 };
/** A mark that changes oftener than this at rest says something else, such as up or down. */
const mostChanging = 0.15;
/** From this on lines take turns. */
const takingTurns = 0.7;
/** Below this no connection is left, above it there may be one. */
const nothing = 0.25;

/** The marks at one place: what they went with, and whether that tells rest from motion. */
interface PlaceFound {
  seen: MarkedLines;
  verdict: Verdict;
  tells: boolean;
  /** in the line of the number; in a block such a mark says more than one in another line */
  own: boolean;
  /** something goes with motion, and what is not sure */
  doubtful: boolean;
}

/** Gives the marks beside the number their meaning, from what they went with. */
export function withMeanings(
  parts: readonly Part[],
  lines: readonly Placed[],
  shownPlaces: number,
): MotionFound {
  const match = grammar(parts);
  const read = lines.flatMap((line) => {
    const matched = match(line.observed.text);
    return matched?.text ? [{ line, marks: matched.marks, value: Number(matched.text) }] : [];
  });
  const observed = read.map(({ line }) => line.observed);
  const values = read.map(({ value }) => value);
  const clearStep = clearStepOf(observed, values, 10 ** -shownPlaces);
  const truth: Truth[] = truths(observed, values, clearStep);
  const leftOut = stepsLeftOut(lines, new Set(read.map(({ line }) => line)));
  const places = placesOf(parts, (slot) => {
    const marks = read.map((line) => line.marks[slot]!.text);
    return {
      seen: { lines: observed, marks, values },
      verdict: judgeMarks(marks, truth, observed, values),
      clearStep,
      leftOut,
    };
  });
  return { ...meaningsFrom(parts, places, truth), turns: turnsOf(places) };
}

/** Steps of the number on the way to lines whose mark is not known well enough to be read. */
function stepsLeftOut(lines: readonly Placed[], read: ReadonlySet<Placed>): number[] {
  return lines.flatMap((line, i) => {
    const before = lines[i - 1];
    const { phase, index } = line.observed.at;
    if (read.has(line) || phase === "below-zero" || before?.observed.at.index !== index) return [];
    return [Number(line.size) - Number(before.size)];
  });
}

function placesOf(
  parts: readonly Part[],
  judged: (slot: number) => Pick<PlaceFound, "seen" | "verdict"> & {
    clearStep: number;
    leftOut: readonly number[];
  },
): PlaceFound[] {
  const numberLine = lineOf(
    parts,
    parts.findIndex(({ is }) => is === "number"),
  );
  const marks = parts.flatMap((part, at) => (isMark(part) ? [at] : []));
  return marks.map((at, slot): PlaceFound => {
    const { seen, verdict, clearStep, leftOut } = judged(slot);
    const tells =
      verdict.rest >= needed.rest &&
      verdict.motion >= needed.motion &&
      verdict.rest + verdict.motion >= needed.together &&
      verdict.changing <= mostChanging &&
      !meansSomethingElse(seen, verdict.means, clearStep, leftOut);
    const doubtful = !tells && verdict.connection > nothing;
    return { seen, verdict, tells, own: lineOf(parts, at) === numberLine, doubtful };
  });
}

function meaningsFrom(
  parts: readonly Part[],
  places: readonly PlaceFound[],
  truth: readonly Truth[],
): Omit<MotionFound, "turns"> {
  const restLines = truth.filter((t) => t === "rest").length;
  const motionLines = truth.filter((t) => t === "motion").length;
  const doubtful = places.some((place) => place.doubtful);
  const ownOnly = places.some(({ own, tells, doubtful: doubted }) => own && (tells || doubted));
  const telling = places.map((place) => place.tells && (place.own || !ownOnly));
  const byMeaning = { steady: [] as string[], moving: [] as string[], unsure: [] as string[] };
  let slot = -1;
  const meaning = parts.map((part): Part => {
    if (!isMark(part)) return part;
    slot += 1;
    if (!telling[slot]) return part;
    const { means } = places[slot]!.verdict;
    for (const [text, meant] of means) byMeaning[meant].push(text);
    return {
      is: "mark",
      marks: part.marks.map((mark) => ({ ...mark, means: means.get(mark.text) ?? "unsure" })),
    };
  });
  const known = byMeaning.steady.length > 0;
  return {
    ...byMeaning,
    parts: !known && doubtful ? parts.map(unsure) : meaning,
    sure: motionLines >= fewestLines && restLines >= fewestLines && (known || !doubtful),
    restLines,
    motionLines,
  };
}

/** Lines whose marks change from one line to the next at rest: their numbers may be gross and net, raw and filtered. */
function turnsOf(places: readonly PlaceFound[]): MotionFound["turns"] {
  const slot = places.findIndex(({ tells, verdict }) => !tells && verdict.changing >= takingTurns);
  const seen = places[slot]?.seen;
  if (!seen) return null;
  const kinds = [...new Set(seen.marks)].map((mark) => ({
    mark,
    line: seen.lines[seen.marks.indexOf(mark)]!.shown,
  }));
  return { slot, kinds };
}

/** The parts with some of the marks at this place only. */
export function withOnly(parts: readonly Part[], slot: number, marks: readonly string[]): Part[] {
  let at = -1;
  return parts.map((part): Part => {
    if (!isMark(part)) return part;
    at += 1;
    return at === slot ? { ...part, marks: part.marks.filter(({ text }) => marks.includes(text)) } : part;
  });
}

const isMark = (part: Part): part is Extract<Part, { is: "mark" }> => part.is === "mark";

/** Which line of a block the part stands in. */
const lineOf = (parts: readonly Part[], at: number) =>
  parts.slice(0, at).flatMap((part) => (part.is === "text" ? (part.text.match(/\n/g) ?? []) : [])).length;

function unsure(part: Part): Part {
  if (part.is !== "mark") return part;
  return { is: "mark", marks: part.marks.map((mark) => ({ ...mark, means: "unsure" })) };
}
