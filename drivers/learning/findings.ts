import { type Code, type Message, message } from "../../calibration/message.ts";
import type { MassUnit } from "../../calibration/units.ts";
import { grammar } from "./grammar.ts";
import type { Lines } from "./lines.ts";
import type { MotionFound } from "./marked-parts.ts";
import type { OtherLine } from "./other-lines.ts";
import type { Ending, Finding, NumberPart } from "./profile.ts";
import type { Observed } from "./recording.ts";
import type { WeightParts } from "./sides.ts";
import type { SignForm } from "./signs.ts";
import type { Typed } from "./typed.ts";
import type { Written } from "./written-weight.ts";

/** A line as it came, for people. */
const shownLine = ({ shown }: Pick<Observed, "shown">) => shown;

/** A mark beside the number, for people; a mark of blanks by its name. */
function markMessage(mark: string): Message {
  if (mark === "") return message("learn.mark.nothing");
  return mark.trim() === ""
    ? message("learn.mark.blanks", { blanks: mark.length })
    : message("learn.mark", { mark: mark.trim() });
}

const eachMark = (marks: readonly string[]) => ({ anyOf: [...new Set(marks)].map(markMessage) });

const endNames: Record<string, string> = {
  "0d0a": "CR LF",
  "0a0d": "LF CR",
  "0d": "CR",
  "0a": "LF",
  "03": "ETX",
};

function endMessage(ending: Ending): Message {
  switch (ending.kind) {
    case "characters": {
      const end = endNames[ending.hex];
      return end === undefined
        ? message("learn.line-end.bytes", { hex: ending.hex })
        : message("learn.line-end.characters", { end });
    }
    case "frame":
      return message("learn.line-end.frame", { behind: ending.behind });
    case "silence":
      return message("learn.line-end.silence", { milliseconds: ending.ms });
    case "any":
      return message("learn.line-end.any");
    case "length":
      return message("learn.line-end.length", { bytes: ending.bytes });
  }
}

/** What was found about the bytes and the lines. */
function lineFindings({ parity, ending, check, block, misfits, single }: Lines): Finding[] {
  const findings: Finding[] = [
    { field: "bytes", sure: true, message: message(`learn.bytes.${parity}`) },
    { field: "line-end", sure: ending.kind !== "any", message: endMessage(ending) },
  ];
  if (check) {
    const code: Code = check.written.startsWith("byte") ? "learn.check.byte" : "learn.check.digits";
    const rule = message(
      check.kind === "xor"
        ? "learn.rule.xor"
        : check.kind.startsWith("crc")
          ? "learn.rule.cyclic"
          : "learn.rule.sum",
    );
    const lines = single.length;
    findings.push({
      field: "check",
      sure: true,
      message: message(code, { rule, fitting: lines - misfits, lines }),
    });
  }
  if (block.lines > 1)
    findings.push({
      field: "block",
      sure: block.sure,
      message: message(block.sure ? "learn.block" : "learn.block.unsure", { lines: block.lines }),
    });
  return findings;
}

/** What was found about the number and its unit. `line` is one that was read so, `text` the number read. */
function numberFindings(
  { style, oneLength, sign, signPlace }: WeightParts & { sign: SignForm; signPlace: object | null },
  unit: MassUnit,
  belowTyped: boolean,
  line: string,
  text: string,
): Finding[] {
  return [
    {
      field: "number",
      sure: true,
      message: message("learn.number", { line, reading: { decimal: text }, unit }),
    },
    ...decimalsFindings(style),
    signFinding(style, sign, signPlace !== null, belowTyped),
    ...(oneLength ? [{ field: "width" as const, sure: false, message: message("learn.width") }] : []),
    { field: "unit", sure: true, message: message("learn.unit.owner", { unit }) },
  ];
}

function decimalsFindings({
  impliedPlaces,
  places,
  decimalMark,
  grouping,
  shift,
  outPlaces,
}: NumberPart): Finding[] {
  const decimals =
    outPlaces === undefined ? places.map((one) => Math.max(0, one - (shift ?? 0))) : [outPlaces];
  const found =
    impliedPlaces === null
      ? message("learn.decimals", { places: { anyOf: decimals } })
      : message("learn.decimals.told", { places: impliedPlaces });
  return [
    found,
    ...(decimalMark === "," ? [message("learn.decimals.comma")] : []),
    ...(grouping === "none" ? [] : [message("learn.decimals.thousands", { mark: grouping })]),
  ].map((one): Finding => ({ field: "decimals", sure: true, message: one }));
}

function signFinding(
  style: NumberPart,
  { is, evident }: SignForm,
  byMark: boolean,
  belowTyped: boolean,
): Finding {
  const found = (code: Code): Finding => ({ field: "sign", sure: belowTyped, message: message(code) });
  if (byMark) return found("learn.sign.mark");
  if (!evident) return found("learn.sign.unseen");
  if (is === "brackets") return found("learn.sign.brackets");
  if (is === "behind") return found("learn.sign.behind");
  return found(style.sign === "pinned-left" ? "learn.sign.pinned" : "learn.sign.beside");
}

/** Which mark goes with motion. `line` gives a line that carries a mark. */
function motionFindings(found: MotionFound, line: (mark: string) => string | null): Finding[] {
  const { sure, steady, moving, unsure, restLines, motionLines } = found;
  const motion = (motionMessage: Message): Finding => ({ field: "motion", sure, message: motionMessage });
  const counts = { rest_lines: restLines, motion_lines: motionLines };
  if (steady.length === 0)
    return [motion(message(sure ? "learn.motion.none" : "learn.motion.none.unsure", counts))];
  const examples = { moving: line(moving[0] ?? ""), steady: line(steady[0] ?? "") };
  return [
    motion(message("learn.motion.marks", { moving: eachMark(moving), steady: eachMark(steady), ...counts })),
    ...(unsure.length === 0 ? [] : [motion(message("learn.motion.seldom", { marks: eachMark(unsure) }))]),
    ...(examples.moving === null || examples.steady === null
      ? []
      : [motion(message("learn.motion.examples", { moving: examples.moving, steady: examples.steady }))]),
  ];
}

/** A balance that sends no number while it moves. */
function restByNumberFinding([blind]: readonly OtherLine[]): Finding {
  const motionMessage = blind
    ? message("learn.motion.by-number.line", { line: shownLine(blind.example) })
    : message("learn.motion.by-number");
  return { field: "motion", sure: true, message: motionMessage };
}

/** Lines without a weight. */
function otherFindings(others: readonly OtherLine[]): Finding[] {
  const lines = others.slice(0, 3).map(({ example }) => message("learn.mark", { mark: shownLine(example) }));
  return lines.length === 0
    ? []
    : [{ field: "other-lines", sure: true, message: message("learn.other-lines", { lines }) }];
}

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
