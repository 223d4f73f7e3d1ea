import { message } from "../../calibration/message.ts";
import { cadenceOf } from "./cadence.ts";
import { unexplainedDigits } from "./counters.ts";
import { grammar } from "./grammar.ts";
import type { Hints, Learned } from "./learned.ts";
import { learnedFindings } from "./learned-findings.ts";
import type { Lines } from "./lines.ts";
import { lostSigns } from "./lost-signs.ts";
import { type MotionFound, withMeanings, withOnly } from "./marked-parts.ts";
import { runsIn } from "./notations.ts";
import { blindLines, otherLines, sentOnlyAtRest } from "./other-lines.ts";
import type { Placed } from "./places.ts";
import type { Profile } from "./profile.ts";
import { sendsByItself, sendsQuestion, turnsQuestion } from "./questions.ts";
import { sampleLines } from "./sample-lines.ts";
import { meaningOfBytes, samplesFrom } from "./samples.ts";
import type { Typed } from "./typed.ts";
import { labelled, vouched } from "./vouching.ts";
import type { Written } from "./written-weight.ts";

/** The profile that reads these lines, once it reproduces every typed value; or a question, or why there is none. */
export function learnedProfile(
  lines: Lines,
  typed: readonly Typed[],
  written: Written,
  hints: Hints,
): Learned {
  const shown = typed.find(({ digits }) => digits !== "")!;
  const belowTyped = typed.some(({ negative }) => negative);
  const known = labelled(vouched(written.parts, written.lines, typed, written.signPlace), shown.unit);
  const signKnown = belowTyped && written.sign.evident;
  if (!written.explained || (unexplainedDigits(written.parts, written.lines) && !signKnown))
    return { refused: withLines("learn.refused.unexplained", shown) };
  const motion = oneKind(withMeanings(known, written.lines, shown.places), written, shown, hints);
  if ("asks" in motion) return { questions: [motion] };
  const match = grammar(motion.parts);
  const readings = lines.texts.filter(({ text }) => match(text) !== null);
  const lost = lostSigns(readings, match);
  if (lost.length > 0) return { refused: message("learn.refused.sign-lost", { lines: sampleLines(lost) }) };
  const sends = cadenceOf(readings, sendsByItself(hints.answers?.sends));
  if (!sends.evident) return { questions: [sendsQuestion(readings.length, hints.answers?.sends)] };
  const read = new Set(readings.flatMap(({ text }) => text.split("\n")));
  const others = otherLines(lines.single.filter(({ text }) => !read.has(text)));
  const blind = blindLines(others, runsIn(ownLine(written.lines[0])).length);
  const restByNumber = sentOnlyAtRest(motion, blind);
  // A line of its own that comes in motion only may well be what tells motion; then "it does not say" is not sure.
  const told = { ...motion, sure: motion.sure && (motion.steady.length > 0 || blind.length === 0) };
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
      motion: told,
      restByNumber: restByNumber ? blind : null,
      shown,
      belowTyped,
      readings,
      others,
      sends: sends.finding,
    }),
  };
  const samples = samplesFrom(base, [...readings, ...others.map(({ example }) => example)]);
  const unread = typed.find((value) => !reproduced({ ...base, samples: [] }, value));
  if (unread || samples.length === 0) return { refused: withLines("learn.refused.not-all", unread ?? shown) };
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
