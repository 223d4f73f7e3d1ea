import { type Code, type Message, message } from "../../calibration/message.ts";
import type { Lines } from "./lines.ts";
import type { MotionFound } from "./marked-parts.ts";
import type { Observed } from "./observed.ts";
import type { OtherLine } from "./other-lines.ts";
import type { Ending, Finding, NumberPart, Profile } from "./profile.ts";
import type { WeightShape } from "./weight-parts.ts";

/** A line as it came, for people. */
export const shownLine = ({ shown }: Pick<Observed, "shown">) => shown;

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
  }
}

/** What was found about the bytes and the lines. */
export function lineFindings({ parity, ending, check, block, misfits, single }: Lines): Finding[] {
  const findings: Finding[] = [
    { field: "bytes", sure: true, message: message(`learn.bytes.${parity}`) },
    { field: "line-end", sure: ending.kind !== "any", message: endMessage(ending) },
  ];
  if (check) {
    const code: Code = check.written === "byte" ? "learn.check.byte" : "learn.check.digits";
    const rule = message(check.kind === "xor" ? "learn.rule.xor" : "learn.rule.sum");
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
export function numberFindings(
  style: NumberPart,
  { zones, explained }: WeightShape,
  unit: Profile["unit"],
  line: string,
  text: string,
): Finding[] {
  const reading = { line, reading: { decimal: text }, unit: unit.unit };
  const oneLength = new Set(zones.map(({ digits }) => digits.length)).size === 1 && style.digits === null;
  return [
    {
      field: "number",
      sure: explained,
      message: message(explained ? "learn.number" : "learn.number.unexplained", reading),
    },
    ...decimalsFindings(style),
    signFinding(style, zones),
    ...(oneLength ? [{ field: "width" as const, sure: false, message: message("learn.width") }] : []),
    {
      field: "unit",
      sure: true,
      message: message(unit.from === "line" ? "learn.unit.line" : "learn.unit.owner", { unit: unit.unit }),
    },
  ];
}

function decimalsFindings({ impliedPlaces, places, decimalMark, grouping }: NumberPart): Finding[] {
  const found =
    impliedPlaces === null
      ? message("learn.decimals", { places: { anyOf: places } })
      : message("learn.decimals.told", { places: impliedPlaces });
  return [
    found,
    ...(decimalMark === "," ? [message("learn.decimals.comma")] : []),
    ...(grouping === "none" ? [] : [message("learn.decimals.thousands", { mark: grouping })]),
  ].map((one): Finding => ({ field: "decimals", sure: true, message: one }));
}

function signFinding({ sign }: NumberPart, zones: WeightShape["zones"]): Finding {
  const sure = zones.some(({ left }) => /[-\u2212]/.test(left));
  const seen = sign === "pinned-left" ? "learn.sign.pinned" : "learn.sign.beside";
  return { field: "sign", sure, message: message(sure ? seen : "learn.sign.unseen") };
}

/** Which mark goes with motion. `line` gives a line that carries a mark. */
export function motionFindings(found: MotionFound, line: (mark: string) => string | null): Finding[] {
  const { sure, steady, moving, unsure, restLines, motionLines } = found;
  const motion = (told: Message): Finding => ({ field: "motion", sure, message: told });
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
export function restByNumberFinding([blind]: readonly OtherLine[]): Finding {
  const told = blind
    ? message("learn.motion.by-number.line", { line: shownLine(blind.example) })
    : message("learn.motion.by-number");
  return { field: "motion", sure: true, message: told };
}

/** Lines without a weight. */
export function otherFindings(others: readonly OtherLine[], overloadAsked: boolean): Finding[] {
  const linesOf = (kind: OtherLine["kind"]) =>
    others
      .filter((other) => other.kind === kind)
      .slice(0, 3)
      .map(({ example }) => message("learn.mark", { mark: shownLine(example) }));
  const over = linesOf("overload");
  const between = linesOf("not-a-weight");
  const unseen = message(overloadAsked ? "learn.overload.alike" : "learn.overload.untried");
  const findings: Finding[] = [
    {
      field: "overload",
      sure: over.length > 0,
      message: over.length > 0 ? message("learn.overload.seen", { lines: over }) : unseen,
    },
  ];
  if (between.length > 0)
    findings.push({
      field: "other-lines",
      sure: true,
      message: message("learn.other-lines", { lines: between }),
    });
  return findings;
}
