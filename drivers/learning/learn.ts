import { message } from "../../calibration/message.ts";
import { binaryNumbers } from "./binary.ts";
import { type Candidate, candidatesOf } from "./candidates.ts";
import { withoutCheck } from "./check.ts";
import { grammar } from "./grammar.ts";
import type { Hints, Learned } from "./learned.ts";
import { learnedProfile } from "./learned-profile.ts";
import { type Frames, type Lines, linesCut, linesOf } from "./lines.ts";
import type { Profile } from "./profile.ts";
import { eachLine, numberQuestion } from "./questions.ts";
import type { Observed, Recording } from "./recording.ts";
import { sampleLines } from "./sample-lines.ts";
import { typedValues } from "./typed.ts";
import { writtenWeight } from "./written-weight.ts";

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
