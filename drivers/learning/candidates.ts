import { type Message, message } from "../../calibration/message.ts";
import { linesUnder, saysSo } from "./hypothesis-check.ts";
import type { Run } from "./notations.ts";
import { hypotheses, type Placed } from "./places.ts";
import { type Observed, sampleLines } from "./recording.ts";
import type { Typed } from "./typed.ts";
import type { Notation } from "./written-number.ts";

/** A hypothesis that agrees with everything typed and heard: where the number stands and how it is written. */
export interface Candidate {
  notation: Notation;
  lines: Placed[];
  /** the sizes that any way to write this number gives, by line: where they differ, none may be read */
  sizes: ReadonlyMap<Observed, readonly string[]>;
}

/** Everything that agrees: for each different number the ways in which it may be written; or why nothing agrees. */
export function candidatesOf(
  texts: readonly Observed[],
  typed: readonly Typed[],
): Candidate[][] | { refused: Message } {
  const reasons: { shifted: boolean; message: Message }[] = [];
  const found: Candidate[] = [];
  for (const { place, notation } of hypotheses(typed)) {
    const judged = linesUnder({ place, notation }, texts, typed);
    if ("refused" in judged) reasons.push({ shifted: notation.shift !== undefined, message: judged.refused });
    else found.push({ notation, lines: judged, sizes: new Map() });
  }
  if (found.length > 0) return groupsOf(found, typed);
  const order: Message["code"][] = [
    "learn.refused.other-unit",
    "learn.refused.point",
    "learn.refused.stands-still",
    "learn.refused.not-all",
    "learn.refused.not-steady",
  ];
  // A point that stands elsewhere is the reason only where no number with its point in place was looked at.
  const plain = reasons.filter(({ shifted }) => !shifted);
  const messages = (plain.length > 0 ? plain : reasons).map((reason) => reason.message);
  const first = order.flatMap((code) => messages.find((reason) => reason.code === code) ?? [])[0];
  return { refused: first ?? notFound(texts, typed) };
}

function notFound(texts: readonly Observed[], typed: readonly Typed[]): Message {
  const value = typed.find(({ digits }) => digits !== "")!;
  const lines = sampleLines(value.lines.length > 0 ? value.lines : texts);
  if (value.lines.length === 0) return message("learn.refused.no-lines-then", { typed: value.shown, lines });
  if (!value.lines.some(({ text }) => /\d/.test(text)))
    return message("learn.refused.no-digits", { typed: value.shown, lines });
  return message("learn.refused.not-found", { typed: value.shown, lines });
}

/**
 * One group for each different number, the plainest way to write it first. Ways to write the same number that differ on some
 * line are kept to the lines on which all agree.
 */
function groupsOf(found: readonly Candidate[], typed: readonly Typed[]): Candidate[][] {
  const value = typed.find(({ digits }) => digits !== "")!;
  const groups: Candidate[][] = [];
  const forms = ({ lines }: Candidate) =>
    new Set(lines.map(({ run }) => run.digits.split(/[.,]/).at(-1)!.length)).size;
  const plainest = [...found].sort((a, b) => forms(a) - forms(b) || b.lines.length - a.lines.length);
  for (const candidate of plainest) {
    const here = spanIn(candidate, value);
    const group = groups.find(([first]) => {
      const there = spanIn(first!, value);
      return here && there && here.start < there.end && there.start < here.end;
    });
    if (group) group.push(candidate);
    else groups.push([candidate]);
  }
  return groups.map((group) => {
    const steadiest = steadiestOf(group);
    const sizes = sizesIn(steadiest);
    return steadiest.map(({ notation, lines }) => {
      const agreed = lines.filter(({ observed }) => different(sizes.get(observed)!) === 1);
      return withZeros({ notation, lines: agreed, sizes });
    });
  });
}

/** A way whose number jumps about so much more than that of another way is no rival to it. */
const mostJumps = 1.2;

/** Ways whose number goes on from line to line about as steadily as that of the steadiest, on the lines that all of them read. */
function steadiestOf(group: readonly Candidate[]): Candidate[] {
  const readBy = sizesIn(group);
  const jumps = group.map(({ lines }) => {
    const values = lines.flatMap(({ observed, size }) =>
      readBy.get(observed)!.length === group.length ? [Number(size)] : [],
    );
    return values.reduce((sum, value, i) => sum + Math.abs(value - (values[i - 1] ?? value)), 0);
  });
  const least = Math.min(...jumps);
  return group.filter((_, i) => jumps[i]! <= mostJumps * least);
}

const different = (sizes: readonly string[]) => new Set(sizes.map(Number)).size;

function sizesIn(group: readonly Candidate[]): Map<Observed, string[]> {
  const sizes = new Map<Observed, string[]>();
  for (const { observed, size } of group.flatMap(({ lines }) => lines))
    sizes.set(observed, [...(sizes.get(observed) ?? []), size]);
  return sizes;
}

function spanIn({ lines }: Candidate, value: Typed): Run | undefined {
  for (const observed of value.lines) {
    const line = lines.find((one) => one.observed === observed && saysSo(one, value));
    if (line) return line.run;
  }
  return undefined;
}

/** So many different numbers without a single zero at their end were written without such zeros. */
const numbersWithoutZeros = 12;

/** Where zeros at the end are left out, the number gets as many decimals as the longest has. */
function withZeros(candidate: Candidate): Candidate {
  const { notation, lines } = candidate;
  const decimals = [...new Set(lines.map(({ size }) => size))].map((size) => size.split(".")[1] ?? "");
  const places = new Set(decimals.map(({ length }) => length));
  const short = decimals.some((some) => some.endsWith("0"));
  if (places.size < 2 || short || decimals.length < numbersWithoutZeros || notation.outPlaces !== undefined)
    return candidate;
  return { ...candidate, notation: { ...notation, outPlaces: Math.max(...places) } };
}
