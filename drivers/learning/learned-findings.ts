import { message } from "../../calibration/message.ts";
import {
  lineFindings,
  motionFindings,
  numberFindings,
  otherFindings,
  restByNumberFinding,
} from "./findings.ts";
import { grammar } from "./grammar.ts";
import type { Lines } from "./lines.ts";
import type { MotionFound } from "./marked-parts.ts";
import type { OtherLine } from "./other-lines.ts";
import type { Finding } from "./profile.ts";
import type { Observed } from "./recording.ts";
import type { Typed } from "./typed.ts";
import type { Written } from "./written-weight.ts";

interface Found {
  lines: Lines;
  written: Written;
  motion: MotionFound;
  /** the lines that come in motion in place of a number, where no number does; null where one does */
  restByNumber: readonly OtherLine[] | null;
  shown: Typed;
  belowTyped: boolean;
  readings: readonly Observed[];
  others: readonly OtherLine[];
  sends: Finding;
}

/** Everything that was found, in the order in which it is told. */
export function learnedFindings(found: Found): Finding[] {
  const { lines, written, motion, restByNumber, shown, belowTyped, readings, others, sends } = found;
  const match = grammar(motion.parts);
  const line = shown.lines.find(({ text }) => match(text)?.text === shown.text)?.shown ?? "";
  const withMark = (mark: string) =>
    readings.findLast(({ text }) =>
      match(text)?.marks.some((one) => one.text === mark && one.means !== "nothing"),
    )?.shown ?? null;
  return [
    ...lineFindings(lines),
    ...numberFindings(written, shown.unit, belowTyped, line, shown.text),
    ...(restByNumber ? [restByNumberFinding(restByNumber)] : motionFindings(motion, withMark)),
    ...otherFindings(others),
    sends,
    coverage(lines, readings, others),
  ];
}

/** Lines that no part of what was learned reads. A few torn ones are usual. */
function coverage({ single }: Lines, readings: readonly Observed[], others: readonly OtherLine[]): Finding {
  const read = new Set(readings.flatMap(({ text }) => text.split("\n")));
  const otherCount = others.reduce((sum, { count }) => sum + count, 0);
  const left = single.filter(({ text }) => !read.has(text)).length - otherCount;
  const sure = left <= Math.max(2, 0.05 * single.length);
  const counts = { lines: single.length, unread: Math.max(0, left) };
  return {
    field: "coverage",
    sure,
    message: message(sure ? "learn.coverage" : "learn.coverage.poor", counts),
  };
}
