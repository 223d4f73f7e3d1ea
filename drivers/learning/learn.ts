import { type Message, message } from "../../calibration/message.ts";
import { binaryNumbers } from "./binary.ts";
import { cadenceOf } from "./cadence.ts";
import { type Candidate, candidatesOf, type Placed, sampleLines } from "./candidates.ts";
import { withoutCheck } from "./check.ts";
import { unexplainedDigits } from "./counters.ts";
import {
  lineFindings,
  motionFindings,
  numberFindings,
  otherFindings,
  restByNumberFinding,
} from "./findings.ts";
import { grammar } from "./grammar.ts";
import { type Frames, type Lines, linesCut, linesOf } from "./lines.ts";
import { withMeanings } from "./marked-parts.ts";
import { runsIn } from "./notations.ts";
import { blindLines, otherLines, sentOnlyAtRest } from "./other-lines.ts";
import type { Ending, Finding, Profile } from "./profile.ts";
import {
  type Answers,
  belowZeroQuestion,
  eachLine,
  minusBefore,
  minusUnknown,
  noMark,
  numberQuestion,
  type Question,
  sendsByItself,
  sendsQuestion,
  signQuestion,
} from "./questions.ts";
import type { Observed, Recording } from "./recording.ts";
import { meaningOfBytes, samplesFrom } from "./samples.ts";
import { type WeightParts, weightParts } from "./sides.ts";
import {
  dashesBeside,
  minusTold,
  type SignForm,
  saysMinus,
  signByMark,
  signForm,
  typedLines,
} from "./signs.ts";
import { type Typed, typedValues } from "./typed.ts";
import { labelled, type SignPlace, signPlaces, vouched } from "./vouching.ts";

export interface Hints {
  name?: string;
  /** when it was learned, ISO 8601, UTC; the clock is the caller's */
  learnedAt?: string;
  /** answers to the questions of an earlier try on the same recording */
  answers?: Answers;
  /** the line end, where the recording cannot show it (pasted text) */
  ending?: Ending;
}

/** Exactly one of the three: a profile, questions that only the owner can answer, or the reason why nothing was learned. */
export type Learned =
  | { profile: Profile; questions?: never; refused?: never }
  | { questions: Question[]; profile?: never; refused?: never }
  | { refused: Message; profile?: never; questions?: never };

/**
 * Learns from a recording how a balance writes its lines. Pure. Every guess is judged together with the others against each
 * typed value and each line; what reproduces not every typed value exactly is refused, what the recording does not decide is
 * asked, and what was never seen is no reading later.
 */
export function learn(recording: Recording, hints: Hints = {}): Learned {
  const lines = linesOf(recording, hints.ending);
  if ("because" in lines) return { refused: lines.because };
  if ("frames" in lines) return learnFromFrames(recording, lines.frames, hints);
  const single = { ...lines, block: { lines: 1, sure: true }, texts: lines.single };
  const { number, ...others } = hints.answers ?? {};
  if (number === eachLine) return learnFrom(recording, single, { ...hints, answers: others });
  // Lines that no pause puts together are more likely one reading each.
  const ways = lines.block.lines === 1 ? [lines] : lines.block.sure ? [lines, single] : [single, lines];
  let first: Learned | undefined;
  for (const way of ways) {
    const learned = learnFrom(recording, way, hints);
    if (!learned.refused) return learned;
    first ??= lines.ending.kind === "silence" ? { refused: unended(learned.refused) } : learned;
  }
  return first!;
}

/** Lines that only a pause ends cannot be told apart where the pauses are lost on the way. */
function unended(because: Message): Message {
  return message("learn.refused.no-line-end", { because });
}

/** Frames of bytes are read as text: their number in decimal digits between what else stands in them. */
function learnFromFrames(recording: Recording, ending: Frames["frames"], hints: Hints): Learned {
  const cut = linesCut(recording, { parity: "none", ending, binary: null });
  const typed = typedValues(recording, cut.single);
  if ("refused" in typed) return typed;
  const lines = sampleLines(typed.find(({ digits }) => digits !== "")!.lines);
  const refused: Learned = { refused: message("learn.failed.binary", { bytes: ending.bytes, lines }) };
  // Two's complement shows itself below zero only.
  if (!typed.some(({ negative }) => negative))
    return { refused: message("learn.failed.binary-below-zero", { lines }) };
  const { check } = cut;
  const bodyOf = (bytes: Uint8Array) => (check === null ? bytes : (withoutCheck(bytes, check) ?? bytes));
  const places = binaryNumbers(ending.bytes, typed, bodyOf);
  const [only, ...others] = places.flatMap((binary) => {
    const learned = learnFrom(recording, linesCut(recording, { parity: "none", ending, binary }), hints);
    return learned.refused ? [] : [learned];
  });
  return only && others.length === 0 ? only : refused;
}

function learnFrom(recording: Recording, lines: Lines, hints: Hints): Learned {
  const { answers = {} } = hints;
  const typed = typedValues(recording, lines.texts);
  if ("refused" in typed) return typed;
  const candidates = candidatesOf(lines.texts, typed);
  if ("refused" in candidates) return candidates;
  const shown = typed.find(({ digits }) => digits !== "")!;
  const chosen = candidates.length === 1 ? candidates[0]! : numberQuestion(candidates, shown, answers.number);
  if ("asks" in chosen) return { questions: [chosen] };
  const written = signed(chosen, typed, shown, answers);
  if (!("parts" in written)) return written;
  return profileOf(lines, typed, written, hints);
}

interface Written extends WeightParts {
  lines: Placed[];
  sign: SignForm;
  signPlace: SignPlace | null;
}

/** How the number, its sign and the marks beside it are written; or a question about the sign, or why it cannot be told. */
function signed(
  candidate: Candidate,
  typed: readonly Typed[],
  shown: Typed,
  answers: Answers,
): Written | Exclude<Learned, { profile: Profile }> {
  const below = typed.some(({ negative }) => negative);
  let form = signForm(candidate.lines, typed);
  if (form && !form.evident && !below) {
    const answer = answers["below-zero"];
    const told = { typed: shown.shown, lines: sampleLines(shown.lines) };
    if (answer === minusUnknown) return { refused: message("learn.refused.below-zero", told) };
    if (answer !== minusBefore)
      return { questions: [belowZeroQuestion(shown.lines[0]?.shown ?? "", answer)] };
    form = minusTold;
  }
  const sign = form ?? signByMark;
  const lines = sign.evident
    ? candidate.lines
    : candidate.lines.filter(
        (line) => !(["before", "behind", "brackets"] as const).some((is) => saysMinus(is, line)),
      );
  const kept: Candidate = { notation: candidate.notation, lines: form ? lines : candidate.lines };
  const parts = weightParts(kept, sign, below && form !== null);
  const told = { typed: shown.shown, lines: sampleLines(shown.lines) };
  if (form) return { ...parts, lines: kept.lines, sign, signPlace: null };
  const places = signPlaces(parts.parts, kept.lines, typed);
  const negative = typed.find((value) => value.negative)!;
  if (places.length === 0)
    return {
      refused: message("learn.refused.sign", {
        ...told,
        typed: negative.shown,
        lines: sampleLines(negative.lines),
      }),
    };
  const doubtful = places.length > 1 || places[0]!.atZero || dashTells(candidate.lines, typed, places[0]!);
  const place = doubtful
    ? signQuestion(places, parts.parts, negative.lines[0]?.shown ?? "", answers.sign)
    : places[0]!;
  if (place === noMark)
    return {
      refused: message("learn.refused.sign", { typed: negative.shown, lines: sampleLines(negative.lines) }),
    };
  if ("asks" in place) return { questions: [place] };
  return { ...parts, lines: kept.lines, sign, signPlace: place };
}

/** A minus elsewhere in the line, beside values below zero only, while the mark itself is none. */
function dashTells(lines: readonly Placed[], typed: readonly Typed[], { minus }: SignPlace): boolean {
  if (minus.every((text) => /[-\u2212]/.test(text))) return false;
  const dashes = (negative: boolean) =>
    typedLines(lines, typed).flatMap(({ value, line }) =>
      value.negative === negative ? [dashesBeside(line)] : [],
    );
  return Math.min(...dashes(true)) > Math.max(...dashes(false));
}

function profileOf(
  lines: Lines,
  typed: readonly Typed[],
  written: Written,
  { name, learnedAt, answers = {} }: Hints,
): Learned {
  const shown = typed.find(({ digits }) => digits !== "")!;
  const told = { typed: shown.shown, lines: sampleLines(shown.lines) };
  const belowTyped = typed.some(({ negative }) => negative);
  if (!written.explained) return { refused: message("learn.refused.unexplained", told) };
  if (unexplainedDigits(written.parts, written.lines) && !(belowTyped && written.sign.evident))
    return { refused: message("learn.refused.unexplained", told) };
  const known = labelled(vouched(written.parts, written.lines, typed, written.signPlace), shown.unit);
  const motion = withMeanings(known, written.lines, 10 ** -shown.places);
  if (motion.takesTurns && !belowTyped) return { refused: message("learn.refused.kinds", told) };
  const match = grammar(motion.parts);
  const readings = lines.texts.filter(({ text }) => match(text) !== null);
  const readLines = new Set(readings.flatMap(({ text }) => text.split("\n")));
  const others = otherLines(lines.single.filter(({ text }) => !readLines.has(text)));
  const numbers = runsIn(written.lines[0]?.observed.text ?? "").length;
  const blind = blindLines(others, numbers);
  const restByNumber = sentOnlyAtRest(motion, blind);
  // A line of its own that comes in motion only may well be what tells motion; then "it does not say" is not sure.
  if (motion.steady.length === 0 && blind.length > 0) motion.sure = false;
  const sends = cadenceOf(readings, sendsByItself(answers.sends));
  if (!sends.evident) return { questions: [sendsQuestion(readings.length, answers.sends)] };
  const unit: Profile["unit"] = { unit: shown.unit, from: "owner" };
  const line = shown.lines.find((one) => match(one.text)?.text === shown.text);
  const findings: Finding[] = [
    ...lineFindings(lines),
    ...numberFindings(written, unit, belowTyped, line?.shown ?? "", shown.text),
    ...(restByNumber
      ? [restByNumberFinding(blind)]
      : motionFindings(motion, (mark) => lineWith(mark, readings, match))),
    ...otherFindings(others),
    sends.finding,
    coverage(
      lines,
      readLines,
      others.reduce((sum, { count }) => sum + count, 0),
    ),
  ];
  const base: Omit<Profile, "samples"> = {
    format: 1,
    name: name ?? "balance without a name",
    learnedAt: learnedAt ?? null,
    parity: lines.parity,
    ending: lines.ending,
    check: lines.check,
    ...(lines.binary && { binary: lines.binary }),
    blockLines: lines.block.lines,
    unit,
    weight: motion.parts,
    ...(restByNumber ? { restByNumber } : {}),
    others: others.map(({ kind, line }) => ({ kind, line })),
    cadence: sends.cadence,
    findings,
  };
  const samples = samplesFrom(base, [...readings, ...others.map(({ example }) => example)]);
  const unread = typed.find((value) => !reproduced({ ...base, samples: [] }, value));
  if (unread || samples.length === 0)
    return {
      refused: message("learn.refused.not-all", {
        typed: (unread ?? shown).shown,
        lines: sampleLines((unread ?? shown).lines),
      }),
    };
  return { profile: { ...base, samples } };
}

/** The whole way from bytes to meaning gives exactly what was typed, on at least one of its lines. */
function reproduced(profile: Profile, { lines, text, unit, digits }: Typed): boolean {
  return lines.some(({ bytes }) => {
    const meaning = meaningOfBytes(profile, bytes);
    if (!meaning || !("reading" in meaning) || meaning.reading.unit !== unit) return false;
    return digits === "" ? Number(meaning.reading.text) === 0 : meaning.reading.text === text;
  });
}

function lineWith(
  mark: string,
  readings: readonly Observed[],
  match: (text: string) => { marks: { text: string; means: string }[] } | null,
): string | null {
  const found = readings.findLast(({ text }) =>
    match(text)?.marks.some((m) => m.text === mark && m.means !== "nothing"),
  );
  return found ? found.shown : null;
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
