import type { Verdict } from "./motion.ts";
import { movingPhases, type Observed } from "./recording.ts";

type Means = Verdict["means"];

/** Lines of a recording with the marks at one place and the numbers beside them. */
export interface MarkedLines {
  lines: readonly Observed[];
  marks: readonly string[];
  values: readonly number[];
}

/** Share of lines that go against a direction, such as lines beside a torn one. */
const missed = 0.03;
/** Steps one way that a mark needs, and steps the other way beside other marks. */
const enough = { with: 2, against: 3 };
/** A balance may feel a hand so long before its last place shows it, ms. */
const aheadMs = 400;
/** A balance says that it rests when its number has kept still so long, ms. */
const stillMs = 1500;

/**
 * True when the marks that seem to tell rest from motion go with something else just as well: with the step from the line
 * before, or with what the owner did before the number moved. What such a mark means is not known. `leftOut` are the steps
 * to lines that carry a mark seen too seldom to be read.
 */
export function meansSomethingElse(
  seen: MarkedLines,
  means: Means,
  clearStep: number,
  leftOut: readonly number[],
): boolean {
  return (
    saysSameNumber(seen, means) ||
    saysDirection(seen, means, clearStep, leftOut) ||
    outOfStep(seen, means, clearStep)
  );
}

const stepsOf = ({ values }: MarkedLines) => values.map((value, i) => (i === 0 ? 0 : value - values[i - 1]!));

/** "The same number as before" against "another number", on every line but one, such as one beside a torn line. */
function saysSameNumber(seen: MarkedLines, means: Means): boolean {
  const changes = stepsOf(seen).flatMap((step, i) => {
    const meant = means.get(seen.marks[i]!);
    return i === 0 || meant === undefined || meant === "unsure" ? [] : [{ step, steady: meant === "steady" }];
  });
  const wrong = changes.filter(({ step, steady }) => (step === 0) !== steady).length;
  return changes.some(({ step }) => step !== 0) && wrong <= 1;
}

/** A mark for a rising number, another or none for a falling one: each goes one way only, though the number went both ways. */
function saysDirection(
  seen: MarkedLines,
  means: Means,
  clearStep: number,
  leftOut: readonly number[],
): boolean {
  const steps = stepsOf(seen);
  const risingShare = (of: readonly number[]) => of.filter((step) => step > 0).length / of.length;
  const ways = [...means].flatMap(([text, meant]) => {
    const here = steps.filter((step, i) => i > 0 && seen.marks[i] === text && step !== 0);
    return meant !== "steady" && here.length >= enough.with ? [risingShare(here)] : [];
  });
  const [up, down] = [1 - 2 * missed, 2 * missed];
  if (ways.length === 0 || !ways.every((share) => share >= up || share <= down)) return false;
  if (ways.some((share) => share >= up) && ways.some((share) => share <= down)) return true;
  const unmarked = [...steps.filter((_, i) => means.get(seen.marks[i]!) === "steady"), ...leftOut].filter(
    (step) => Math.abs(step) > clearStep,
  );
  const against = unmarked.filter((step) => step > 0 !== ways[0]! >= up);
  return against.length >= enough.against;
}

/**
 * While something was done to the pan the mark never said rest, though the number kept still; or in most steps in which something was done to the pan the mark said motion before the number moved at all, as a door that
 * is opened does, or still said rest when the number had clearly moved, as a mark of the line before does.
 */
function outOfStep({ lines, marks, values }: MarkedLines, means: Means, clearStep: number): boolean {
  const digit = clearStep / 8;
  const isStill = (i: number) =>
    i > 0 &&
    values.every(
      (value, j) =>
        j > i ||
        (j < i - 1 && lines[i]!.atMs - lines[j]!.atMs > stillMs) ||
        Math.abs(value - values[i]!) <= digit,
    );
  const still = marks.filter((_, i) => movingPhases.includes(lines[i]!.at.phase) && isStill(i));
  if (still.length > 0 && !still.some((mark) => means.get(mark) === "steady")) return true;
  let [early, late, looked] = [0, 0, 0];
  const steps = new Set(lines.filter(({ at }) => movingPhases.includes(at.phase)).map(({ at }) => at.index));
  for (const step of steps) {
    const from = lines.findIndex(({ at }) => at.index === step);
    const to = lines.findLastIndex(({ at }) => at.index === step);
    const before = values[from - 1];
    if (before === undefined || means.get(marks[from - 1]!) !== "steady") continue;
    const onset = values.findIndex(
      (value, i) => i >= from && i <= to && Math.abs(value - before) > clearStep,
    );
    if (onset < 0) continue;
    looked += 1;
    const moved = values.findIndex((value, i) => i >= from && Math.abs(value - before) > digit);
    const quiet = lines.findIndex(({ atMs }) => atMs > lines[moved]!.atMs - aheadMs);
    if (marks.slice(from, quiet).some((mark) => means.get(mark) === "moving")) early += 1;
    if (means.get(marks[onset]!) === "steady") late += 1;
  }
  return [early, late].some((some) => some > looked / 2);
}
