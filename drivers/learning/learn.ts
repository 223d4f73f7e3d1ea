import { type Message, message } from "../../calibration/message.ts";
import { cadenceOf } from "./cadence.ts";
import {
  lineFindings,
  motionFindings,
  numberFindings,
  otherFindings,
  restByNumberFinding,
  shownLine,
} from "./findings.ts";
import { grammar } from "./grammar.ts";
import { type Lines, linesOf } from "./lines.ts";
import { withMeanings } from "./marked-parts.ts";
import { commaUnclear, marksOf } from "./number-style.ts";
import { numbersIn } from "./numbers.ts";
import { atRest, type Observed } from "./observed.ts";
import { blindLines, otherLines, sentOnlyAtRest } from "./other-lines.ts";
import type { Ending, Finding, NumberPart, Profile } from "./profile.ts";
import {
  type Answered,
  type Answers,
  commaQuestion,
  displayedQuestion,
  type Question,
  unitQuestion,
  whichQuestion,
} from "./questions.ts";
import type { Recording } from "./recording.ts";
import { samplesFrom } from "./samples.ts";
import { type WeightCandidate, weightCandidates } from "./weight-lines.ts";
import { around, weightShape } from "./weight-parts.ts";

export interface Hints {
  name?: string;
  /** when it was learned, ISO 8601, UTC; the clock is the caller's */
  learnedAt?: string;
  /** answers to the questions of an earlier try on the same recording */
  answers?: Answers;
  /** the line end, where the recording cannot show it (pasted text) */
  ending?: Ending;
}

export interface Learned {
  /** null while a question is open or nothing could be learned */
  profile: Profile | null;
  findings: Finding[];
  /** why nothing was learned */
  failed?: Message;
  questions: Question[];
}

/**
 * Learns from a recording how a balance writes its lines. Pure. What was not seen, or not seen often enough, is a
 * finding with `sure: false`. What no bytes can tell is asked; answer by calling again with `hints.answers`.
 */
export function learn(recording: Recording, hints: Hints = {}): Learned {
  const lines = linesOf(recording, hints.ending);
  if ("because" in lines) return nothing(lines.because);
  const findings = lineFindings(lines);
  const candidates = weightCandidates(lines.texts);
  const line = exampleLine(candidates[0], lines);
  if (candidates.length === 0)
    return nothing(message("learn.failed.no-weight", { lines: lines.single.length, line }), findings);

  const questions: Question[] = [];
  const ask = <T extends string | number>(asked: Question | T | null): T | null => {
    if (asked === null || typeof asked !== "object") return asked;
    questions.push(asked);
    return null;
  };
  const answers = hints.answers ?? {};
  const ordinal =
    candidates.length === 1
      ? candidates[0]!.ordinal
      : ask(whichQuestion(choices(candidates), line, answers["which-number"]));
  const chosen = candidates.find((candidate) => candidate.ordinal === ordinal) ?? candidates[0]!;
  const told: Answered = { comma: null, impliedPlaces: null, unit: null, whichNumber: ordinal };
  let shape = weightShape(chosen.lines, told);
  if (shape.notWeight)
    return nothing(
      message("learn.failed.not-a-weight", { quantity: message(shape.notWeight), line }),
      findings,
    );
  const example = chosen.lines.find(({ observed }) => shownLine(observed) === line)?.number.digits ?? "";
  if (commaUnclear(shape.zones)) {
    const marked = shape.zones.find(({ digits }) => /[.,]/.test(digits))!.digits;
    told.comma = ask(commaQuestion(marked, line, answers.comma));
  }
  const marks = marksOf(shape.zones, told.comma);
  if (marks.decimalMark === "none" && marks.grouping === "none" && !commaUnclear(shape.zones))
    told.impliedPlaces = ask(displayedQuestion(example, line, answers.displayed));
  told.unit = shape.unit?.unit ?? ask(unitQuestion(line, answers.unit));
  if (questions.length > 0 || told.unit === null) return { profile: null, findings, questions };
  shape = weightShape(chosen.lines, told);

  const style = shape.parts.find((part): part is NumberPart => part.is === "number")!;
  const lastPlace = 10 ** -(style.decimalMark === "none" ? 0 : Math.max(...style.places));
  const motion = withMeanings(shape.parts, chosen.lines, lastPlace);
  const match = grammar(motion.parts);
  const readings = lines.texts.filter(({ text }) => match(text) !== null);
  const readLines = new Set(readings.flatMap(({ text }) => text.split("\n")));
  const others = otherLines(lines.single.filter(({ text }) => !readLines.has(text)));
  const weighed = chosen.lines[0]!;
  const ownLine = around(weighed.observed.text, weighed.number.start, weighed.number.end).text;
  const blind = blindLines(others, numbersIn(ownLine).length);
  const restByNumber = sentOnlyAtRest(motion, blind);
  // A line of its own that comes in motion only may well be what tells motion; then "it does not say" is not sure.
  if (motion.steady.length === 0 && blind.length > 0) motion.sure = false;
  const { cadence, finding: cadenceFinding } = cadenceOf(readings);
  const unit: Profile["unit"] = { unit: told.unit, from: shape.unit ? "line" : "owner" };
  const shown = readings.find((reading) => shownLine(reading) === line) ?? readings[0];
  findings.push(
    ...numberFindings(style, shape, unit, line, (shown && match(shown.text)?.text) ?? ""),
    ...(restByNumber
      ? [restByNumberFinding(blind)]
      : motionFindings(motion, (mark) => lineWith(mark, readings, match))),
    ...otherFindings(
      others,
      recording.moments.some(({ phase }) => phase === "overloaded"),
    ),
    cadenceFinding,
    coverage(
      lines,
      readLines,
      others.reduce((sum, { count }) => sum + count, 0),
    ),
  );
  const base: Omit<Profile, "samples"> = {
    format: 1,
    name: hints.name ?? "balance without a name",
    learnedAt: hints.learnedAt ?? null,
    parity: lines.parity,
    ending: lines.ending,
    check: lines.check,
    blockLines: lines.block.lines,
    unit,
    weight: motion.parts,
    ...(restByNumber ? { restByNumber } : {}),
    others: others.map(({ kind, line }) => ({ kind, line })),
    cadence,
    findings,
  };
  const samples = samplesFrom(base, [...readings, ...others.map(({ example }) => example)]);
  if (samples.length === 0) return nothing(message("learn.failed.not-read-back", { line }), findings);
  return { profile: { ...base, samples }, findings, questions: [] };
}

function nothing(failed: Message, findings: Finding[] = []): Learned {
  return { profile: null, findings, failed, questions: [] };
}

/** The last line at rest with the weight on: the one the owner can compare with the display. */
function exampleLine(candidate: WeightCandidate | undefined, lines: Lines): string {
  const loaded = candidate?.lines.findLast(
    ({ observed }) => atRest(observed) && observed.at.phase !== "empty",
  );
  const line: Observed | undefined = loaded?.observed ?? lines.texts[Math.floor(lines.texts.length / 2)];
  return line ? shownLine(line) : "";
}

/** Each number that follows the weight, with what stands before it. */
function choices(candidates: readonly WeightCandidate[]) {
  return candidates.flatMap(({ ordinal, lines }) => {
    const loaded = lines.findLast(({ observed }) => atRest(observed) && observed.at.phase !== "empty");
    if (!loaded) return [];
    const { observed, number } = loaded;
    const before = observed.text.slice(0, number.start).split(/\n|\d/).at(-1) ?? "";
    return [{ ordinal, shown: `${before.trim()} ${number.digits}`.trim() }];
  });
}

function lineWith(
  mark: string,
  readings: readonly Observed[],
  match: ReturnType<typeof grammar>,
): string | null {
  const found = readings.findLast(({ text }) =>
    match(text)?.marks.some((m) => m.text === mark && m.means !== "nothing"),
  );
  return found ? shownLine(found) : null;
}

/** Lines that no part of what was learned reads. A few torn ones are usual. */
function coverage({ single }: Lines, readLines: ReadonlySet<string>, otherCount: number): Finding {
  const left = single.filter(({ text }) => !readLines.has(text)).length - otherCount;
  const sure = left <= Math.max(2, 0.05 * single.length);
  const counts = { lines: single.length, unread: Math.max(0, left) };
  return {
    field: "coverage",
    sure,
    message: message(sure ? "learn.coverage" : "learn.coverage.poor", counts),
  };
}
