import type { Placed } from "./candidates.ts";
import { grammar } from "./grammar.ts";
import { fewestLines, judgeMarks, type Truth, truths, type Verdict } from "./motion.ts";
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
  /** lines of two kinds take turns at rest: of one of them the number may be gross, of the other net */
  takesTurns: boolean;
}

/** A nervous balance says now and then that it moves when it rests; while things move its mark may lag behind. */
const needed = { rest: 0.6, motion: 0.8, together: 1.55 };
/** A mark that changes oftener than this at rest says something else, such as up or down. */
const mostChanging = 0.15;
/** From this on lines take turns. */
const takingTurns = 0.7;
/** Below this no connection is left, above it there may be one. */
const nothing = 0.25;

/** Gives the marks beside the number their meaning, from what they went with. */
export function withMeanings(
  parts: readonly Part[],
  lines: readonly Placed[],
  lastPlace: number,
): MotionFound {
  const match = grammar(parts);
  const read = lines.flatMap((line) => {
    const matched = match(line.observed.text);
    return matched?.text ? [{ line, marks: matched.marks, value: Number(matched.text) }] : [];
  });
  const observed = read.map(({ line }) => line.observed);
  const truth: Truth[] = truths(
    observed,
    read.map(({ value }) => value),
    lastPlace,
  );
  const restLines = truth.filter((t) => t === "rest").length;
  const motionLines = truth.filter((t) => t === "motion").length;
  const found: MotionFound = {
    parts: [],
    sure: true,
    steady: [],
    moving: [],
    unsure: [],
    restLines,
    motionLines,
    takesTurns: false,
  };
  // In a block of lines a mark in the line of the number says more than one in another line.
  const places = parts.map((part, i) => (isMark(part) ? lineOf(parts, i) : -1)).filter((line) => line >= 0);
  const own = lineOf(
    parts,
    parts.findIndex(({ is }) => is === "number"),
  );
  let doubtful = false;
  let ownDoubtful = false;
  const verdicts = parts.filter(isMark).map((_, slot) => {
    const verdict = judgeMarks(
      read.map(({ marks }) => marks[slot]!.text),
      truth,
      observed,
    );
    const tells =
      verdict.rest >= needed.rest &&
      verdict.motion >= needed.motion &&
      verdict.rest + verdict.motion >= needed.together &&
      verdict.changing <= mostChanging;
    if (!tells && verdict.connection > nothing) {
      doubtful = true;
      ownDoubtful ||= places[slot] === own;
    }
    if (!tells && verdict.changing >= takingTurns) found.takesTurns = true;
    return tells ? verdict : null;
  });
  const ownTells = verdicts.some((verdict, slot) => verdict && places[slot] === own);
  let slot = -1;
  found.parts = parts.map((part): Part => {
    if (!isMark(part)) return part;
    slot += 1;
    const verdict = verdicts[slot];
    if (!verdict || ((ownTells || ownDoubtful) && places[slot] !== own)) return part;
    for (const [text, means] of verdict.means) found[means].push(text);
    return { is: "mark", marks: part.marks.map((mark) => ({ ...mark, means: meant(verdict, mark.text) })) };
  });
  const told = found.steady.length > 0;
  found.sure = motionLines >= fewestLines && restLines >= fewestLines && (told || !doubtful);
  if (!told && doubtful) found.parts = parts.map(unsure);
  return found;
}

const isMark = (part: Part): part is Extract<Part, { is: "mark" }> => part.is === "mark";

/** Which line of a block the part stands in. */
const lineOf = (parts: readonly Part[], at: number) =>
  parts.slice(0, at).flatMap((part) => (part.is === "text" ? (part.text.match(/\n/g) ?? []) : [])).length;

const meant = (verdict: Verdict, text: string) => verdict.means.get(text) ?? "unsure";

function unsure(part: Part): Part {
  if (part.is !== "mark") return part;
  return { is: "mark", marks: part.marks.map((mark) => ({ ...mark, means: "unsure" })) };
}
