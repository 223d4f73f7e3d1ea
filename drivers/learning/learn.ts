import { message } from "../../calibration/message.ts";
import { binaryNumbers } from "./bytes.ts";
import { cadenceOf } from "./cadence.ts";
import { type Candidate, candidatesOf } from "./candidates.ts";
import { withoutCheck } from "./check.ts";
import { learnedFindings } from "./findings.ts";
import { grammar } from "./grammar.ts";
import type { Hints, Learned } from "./learned.ts";
import { type Frames, type Lines, linesCut, linesOf } from "./lines.ts";
import { type MotionFound, withMeanings, withOnly } from "./marked-parts.ts";
import { runsIn } from "./notations.ts";
import { blindLines, otherLines, sentOnlyAtRest } from "./other-lines.ts";
import type { Placed } from "./places.ts";
import type { Part, Profile } from "./profile.ts";
import {
  eachLine,
  kindsQuestion,
  nearZeroQuestion,
  numberQuestion,
  oneKindOnly,
  type Question,
  sendsByItself,
  sendsQuestion,
  turnsQuestion,
} from "./questions.ts";
import { type Observed, type Recording, sampleLines } from "./recording.ts";
import { meaningOfBytes, samplesFrom } from "./samples.ts";
import { slowerEverySecond } from "./slower-lines.ts";
import { type Typed, typedValues } from "./typed.ts";
import { gluedDigits, lostSigns, unexplainedDigits } from "./unexplained.ts";
import {
  heldMarks,
  labelled,
  linesWith,
  type MarkAt,
  nearZeroMarks,
  vouched,
  withoutMarks,
} from "./vouching.ts";
import { type Written, writtenWeight } from "./written-weight.ts";

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
  const [first, second] = ways.map((way) => () => learnFrom(recording, way, hints));
  const learned = first!();
  if (!learned.refused) return learned;
  const again = second?.();
  if (again && !again.refused) return again;
  // Lines that only a pause ends cannot be told apart where the pauses are lost on the way.
  if (lines.ending.kind === "silence")
    return { refused: message("learn.refused.no-line-end", { because: learned.refused }) };
  return learned;
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

function learnFrom(recording: Recording, cut: Lines, hints: Hints): Learned {
  const { answers = {} } = hints;
  const typed = typedValues(recording, cut.texts);
  if ("refused" in typed) return typed;
  const candidates = candidatesOf(cut.texts, typed);
  if ("refused" in candidates) return candidates;
  const shown = typed.find(({ digits }) => digits !== "")!;
  const chosen = candidates.length === 1 ? candidates[0]! : numberQuestion(candidates, shown, answers.number);
  if ("asks" in chosen) return { questions: [chosen] };
  let lines: Observed[] = [];
  for (const way of chosen) {
    const written = writtenWeight(way, typed, answers);
    const learned = "parts" in written ? learnedProfile(cut, typed, written, hints) : written;
    if (!learned.profile || disputed(learned.profile, way).length === 0) return learned;
    lines = disputed(learned.profile, way);
  }
  return { refused: message("learn.refused.not-steady", { typed: shown.shown, lines: sampleLines(lines) }) };
}

/** Lines that the profile reads otherwise than some way to write the number does: they are a reading of none. */
function disputed({ weight }: Profile, { sizes }: Candidate): Observed[] {
  const match = grammar(weight);
  return [...sizes].flatMap(([observed, all]) => {
    const read = match(observed.text)?.text;
    return read && all.some((size) => Number(size) !== Math.abs(Number(read))) ? [observed] : [];
  });
}

/** The profile that reads these lines, once it reproduces every typed value; or a question, or why there is none. */
function learnedProfile(lines: Lines, typed: readonly Typed[], written: Written, hints: Hints): Learned {
  const shown = typed.find(({ digits }) => digits !== "")!;
  const belowTyped = typed.some(({ negative }) => negative);
  const trusted = trustedMarks(written, typed, hints.answers?.["near-zero"]);
  if ("asks" in trusted) return { questions: [trusted] };
  const known = trusted.parts;
  const signKnown = belowTyped && written.sign.evident;
  const unexplained = unexplainedDigits(written.parts, written.lines) && !signKnown;
  if (!written.explained || unexplained || gluedDigits(written.parts))
    return { refused: withLines("learn.refused.unexplained", shown) };
  const motion = oneKind(withMeanings(known, written.lines, shown.places), written, shown, hints);
  if ("asks" in motion) return { questions: [motion] };
  const match = grammar(motion.parts);
  const readings = lines.texts.filter(({ text }) => match(text) !== null);
  const lost = lostSigns(readings, match);
  if (lost.length > 0) return { refused: message("learn.refused.sign-lost", { lines: sampleLines(lost) }) };
  const kinds = unmarkedKinds(readings, match, shown, hints.answers?.kinds);
  if (kinds) return kinds;
  const sends = cadenceOf(readings, sendsByItself(hints.answers?.sends));
  if (!sends.evident) return { questions: [sendsQuestion(readings.length, hints.answers?.sends)] };
  const unread = trusted.unread.map(({ observed }) => observed);
  const read = new Set([...readings, ...unread].flatMap(({ text }) => text.split("\n")));
  const others = otherLines(lines.single.filter(({ text }) => !read.has(text)));
  const blind = blindLines(others, runsIn(ownLine(written.lines[0])).length);
  const restByNumber = sentOnlyAtRest(motion, blind);
  // A line of its own that comes in motion only may well be what tells motion; then "it does not say" is not sure.
  const stability = { ...motion, sure: motion.sure && (motion.steady.length > 0 || blind.length === 0) };
  const base: Omit<Profile, "samples"> = {
    format: 1,
    name: hints.name ?? "balance without a name",
    learnedAt: hints.learnedAt ?? null,
    parity: lines.parity,
    ending: lines.ending,
    check: lines.check,
    ...(lines.binary && { binary: lines.binary }),
    blockLines: lines.block.lines,
    unit: { unit: shown.unit, from: "owner" },
    weight: motion.parts,
    ...(restByNumber ? { restByNumber } : {}),
    others: others.map(({ kind, line }) => ({ kind, line })),
    cadence: sends.cadence,
    findings: learnedFindings({
      lines,
      written,
      motion: stability,
      restByNumber: restByNumber ? blind : null,
      shown,
      belowTyped,
      readings,
      others,
      sends: sends.finding,
    }),
  };
  const samples = samplesFrom(base, [...readings, ...others.map(({ example }) => example)]);
  const missed = typed.find((value) => !reproduced({ ...base, samples: [] }, value));
  if (missed || samples.length === 0) return { refused: withLines("learn.refused.not-all", missed ?? shown) };
  return { profile: { ...base, samples } };
}

const withLines = (code: "learn.refused.not-all" | "learn.refused.unexplained", { shown, lines }: Typed) =>
  message(code, { typed: shown, lines: sampleLines(lines) });

/** The line that carries the number, without the others of its block. */
function ownLine(placed: Placed | undefined): string {
  const { text = "" } = placed?.observed ?? {};
  const at = placed?.run.start ?? 0;
  return text.slice(text.lastIndexOf("\n", at) + 1).split("\n")[0]!;
}

/**
 * The parts with the marks that do not change what the number means, and the lines with others that are no reading: those that
 * hold an old number, and those near zero of which the owner does not say that the balance weighs then.
 */
function trustedMarks(
  { parts, lines, signPlace }: Written,
  typed: readonly Typed[],
  answer: string | undefined,
): Question | { parts: Part[]; unread: Placed[] } {
  const [{ unit }] = typed as [Typed];
  const vouchedFor = labelled(vouched(parts, lines, typed, signPlace), unit);
  const held = heldMarks(vouchedFor, lines, typed);
  const few = nearZeroMarks(withoutMarks(vouchedFor, held), signPlace);
  const without = (marks: MarkAt[]) => ({
    parts: withoutMarks(vouchedFor, marks),
    unread: linesWith(vouchedFor, lines, marks),
  });
  if (few.length === 0) return without(held);
  const examples = sampleLines(linesWith(vouchedFor, lines, few).map(({ observed }) => observed));
  const asked = nearZeroQuestion(examples, unit, answer);
  if ("asks" in asked) return asked;
  return without(asked.weighs ? held : [...held, ...few]);
}

/**
 * Where every second number follows more slowly and no mark says so, two kinds of line may take turns that cannot be told
 * apart: the question, or the refusal once the owner did not say that there is one kind only.
 */
function unmarkedKinds(
  readings: readonly Observed[],
  match: ReturnType<typeof grammar>,
  { places }: Typed,
  answer: string | undefined,
): Learned | undefined {
  if (answer === oneKindOnly) return undefined;
  const numbers = readings.map(({ text, atMs }) => ({ value: Number(match(text)?.text ?? 0), atMs }));
  if (!slowerEverySecond(numbers, 10 ** -places)) return undefined;
  const kinds = kindsQuestion(sampleLines(readings), answer);
  return "asks" in kinds
    ? { questions: [kinds] }
    : { refused: message("learn.refused.two-kinds", { lines: sampleLines(readings) }) };
}

/** Where lines of several kinds take turns, those of the kind that the owner names; until then the question. */
function oneKind(found: MotionFound, { lines }: Written, { places }: Typed, { answers }: Hints) {
  const { turns, parts } = found;
  if (!turns) return found;
  const kind = turnsQuestion(turns.kinds, answers?.turns);
  return "asks" in kind ? kind : withMeanings(withOnly(parts, turns.slot, kind.marks), lines, places);
}

/** The whole way from bytes to meaning gives exactly what was typed, on at least one of its lines. */
function reproduced(profile: Profile, { lines, text, unit, digits }: Typed): boolean {
  return lines.some(({ bytes }) => {
    const meaning = meaningOfBytes(profile, bytes);
    if (!meaning || !("reading" in meaning) || meaning.reading.unit !== unit) return false;
    return digits === "" ? Number(meaning.reading.text) === 0 : meaning.reading.text === text;
  });
}
