import type { Lines } from "./lines.ts";
import type { MotionFound } from "./marked-parts.ts";
import type { Observed } from "./observed.ts";
import type { OtherLine } from "./other-lines.ts";
import type { Ending, Finding, NumberPart, Profile } from "./profile.ts";
import type { WeightShape } from "./weight-parts.ts";

/** A line as it came, for people. */
export const shownLine = ({ shown }: Pick<Observed, "shown">) => shown;

/** A mark in quotes; a mark of blanks by name. */
export function quoted(mark: string): string {
  if (mark === "") return "nothing";
  return mark.trim() === "" ? (mark.length === 1 ? "a blank" : `${mark.length} blanks`) : `"${mark.trim()}"`;
}

const eachQuoted = (marks: readonly string[]) => [...new Set(marks.map(quoted))].join(" or ");

const endNames: Record<string, string> = {
  "0d0a": "CR LF",
  "0a0d": "LF CR",
  "0d": "CR",
  "0a": "LF",
  "03": "ETX",
};

function endSays(ending: Ending): string {
  switch (ending.kind) {
    case "characters":
      return `Every line ends with ${endNames[ending.hex] ?? `the bytes ${ending.hex}`}.`;
    case "frame":
      return `Every line stands between STX and ETX${ending.behind === 0 ? "" : `, with ${ending.behind} more byte${ending.behind === 1 ? "" : "s"} behind`}.`;
    case "silence":
      return `Lines have no end character; a pause of ${ending.ms} ms ends one.`;
    case "any":
      return "Any CR or LF ends a line; the true line end was not seen.";
  }
}

const paritySays = {
  none: "Every byte is a whole character; no parity bit shows in it.",
  even: "The balance sends seven data bits with even parity (7E1), received as 8N1. The parity bit is checked and taken off.",
  odd: "The balance sends seven data bits with odd parity (7O1), received as 8N1. The parity bit is checked and taken off.",
  mark: "The eighth bit is always set. It is taken off.",
};

/** What was found about the bytes and the lines, in words. */
export function lineFindings({ parity, ending, check, block, misfits, single }: Lines): Finding[] {
  const findings: Finding[] = [
    { field: "bytes", sure: true, says: paritySays[parity] },
    { field: "line-end", sure: ending.kind !== "any", says: endSays(ending) },
  ];
  if (check)
    findings.push({
      field: "check",
      sure: true,
      says: `A check ${check.written === "byte" ? "byte" : "of two hexadecimal digits"}, ${check.kind === "xor" ? "exclusive or" : "sum"}, fits ${single.length - misfits} of ${single.length} lines. A line whose check does not fit is dropped.`,
    });
  if (block.lines > 1)
    findings.push({
      field: "block",
      sure: block.sure,
      says: `${block.lines} lines make one reading${block.sure ? "" : ", but no pause shows which of them is the first"}.`,
    });
  return findings;
}

/** What was found about the number and its unit, in words. `line` is one that was read so, `text` the number read. */
export function numberFindings(
  style: NumberPart,
  { zones, explained }: WeightShape,
  unit: Profile["unit"],
  line: string,
  text: string,
): Finding[] {
  const minus = zones.some(({ left }) => /[-\u2212]/.test(left));
  const places =
    style.impliedPlaces === null ? style.places.join(" or ") : `${style.impliedPlaces}, told by you`;
  return [
    {
      field: "number",
      sure: explained,
      says: explained
        ? `"${line}" is read as ${text} ${unit.unit}.`
        : `"${line}" is read as ${text} ${unit.unit}, but other text in the line changed in more ways than could be explained.`,
    },
    {
      field: "decimals",
      sure: true,
      says: `Decimals: ${places}.${style.decimalMark === "," ? " The comma is a decimal comma." : ""}${style.grouping === "none" ? "" : ` "${style.grouping}" marks thousands.`}`,
    },
    {
      field: "sign",
      sure: minus,
      says: minus
        ? `A minus stands ${style.sign === "pinned-left" ? "at the left end of the number's field" : "right before the digits"}.`
        : "No number below zero was seen. A minus is expected where the plus stands, or right before the digits.",
    },
    ...(new Set(zones.map(({ digits }) => digits.length)).size > 1 || style.digits !== null
      ? []
      : [
          {
            field: "width" as const,
            sure: false,
            says: "Only numbers of one length were seen. Longer ones may be refused; learn again with a heavier weight before relying on them.",
          },
        ]),
    {
      field: "unit",
      sure: true,
      says:
        unit.from === "line"
          ? `The unit in the line is ${unit.unit}.`
          : `The unit is ${unit.unit}, told by you; the line does not say it.`,
    },
  ];
}

/** Which mark goes with motion, in words. */
export function motionFinding(found: MotionFound, line: (mark: string) => string | null): Finding {
  const { sure, steady, moving, unsure, restLines, motionLines } = found;
  const seen = `${restLines} lines at rest and ${motionLines} in motion`;
  if (steady.length > 0) {
    const examples = [line(moving[0] ?? ""), line(steady[0] ?? "")];
    return {
      field: "motion",
      sure,
      says: `While the number moves the line has ${eachQuoted(moving)}, at rest it has ${eachQuoted(steady)} (${seen}).${unsure.length === 0 ? "" : ` What ${eachQuoted(unsure)} means was seen too seldom to say.`}${examples.every((e) => e !== null) ? ` Moving: "${examples[0]}". At rest: "${examples[1]}".` : ""}`,
    };
  }
  return {
    field: "motion",
    sure,
    says: sure
      ? `The line does not say whether the number moves (${seen}). The bench judges rest from the numbers.`
      : `It is not sure whether the line says that the number moves (${seen}). The bench judges rest from the numbers.`,
  };
}

/** A balance that sends no number while it moves, in words. */
export function restByNumberFinding(blindLines: readonly OtherLine[]): Finding {
  const blind = blindLines[0];
  return {
    field: "motion",
    sure: true,
    says: `While it moves the balance sends no number${blind ? `, but "${shownLine(blind.example)}"` : ""}. A line with a number is a line at rest.`,
  };
}

/** Lines without a weight, in words. */
export function otherFindings(others: readonly OtherLine[], overloadAsked: boolean): Finding[] {
  const over = others.filter(({ kind }) => kind === "overload");
  const between = others.filter(({ kind }) => kind === "not-a-weight");
  const list = (some: readonly OtherLine[]) =>
    some
      .slice(0, 3)
      .map(({ example }) => `"${shownLine(example)}"`)
      .join(", ");
  const findings: Finding[] = [
    {
      field: "overload",
      sure: over.length > 0,
      says:
        over.length > 0
          ? `Loaded beyond its range the balance says ${list(over)}.`
          : overloadAsked
            ? "Loaded beyond its range the balance said nothing that differs from its other lines."
            : "What it says when loaded beyond its range was not tried. Such a line is refused as unknown.",
    },
  ];
  if (between.length > 0)
    findings.push({
      field: "other-lines",
      sure: true,
      says: `Lines without a weight stand between the readings and are passed over: ${list(between)}.`,
    });
  return findings;
}
