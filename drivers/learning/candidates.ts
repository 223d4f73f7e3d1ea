import { keysOf } from "../../calibration/keyed.ts";
import { type Message, message } from "../../calibration/message.ts";
import { notationsOf, type Run, type RunForm, runForms, runsIn, shiftExplained } from "./notations.ts";
import { atRest, type Observed, skeleton } from "./recording.ts";
import type { Typed } from "./typed.ts";
import { magnitudeOf, type Notation } from "./written-number.ts";

/** One line with the number that a hypothesis takes for the weight. */
export interface Placed {
  observed: Observed;
  run: Run;
  /** decimal text without sign */
  size: string;
}

/** A hypothesis that agrees with everything typed and heard: where the number stands and how it is written. */
export interface Candidate {
  notation: Notation;
  lines: Placed[];
}

/** Where the number stands: the n-th of its kind from one end, or in fixed columns. */
type Place =
  | { form: RunForm; from: "left" | "right"; ordinal: number }
  | { from: "column"; start: number; end: number; length: number };

/** Everything that agrees, one candidate for each different number; or the reason why nothing does. */
export function candidatesOf(
  texts: readonly Observed[],
  typed: readonly Typed[],
): Candidate[] | { refused: Message } {
  const reasons: { shifted: boolean; message: Message }[] = [];
  const found: Candidate[] = [];
  for (const { place, notation } of hypotheses(typed)) {
    const judged = judge({ place, notation }, texts, typed);
    if ("refused" in judged) reasons.push({ shifted: notation.shift !== undefined, message: judged.refused });
    else found.push(judged);
  }
  if (found.length > 0) return distinct(found, typed);
  const order: Message["code"][] = [
    "learn.refused.other-unit",
    "learn.refused.point",
    "learn.refused.stands-still",
    "learn.refused.not-all",
    "learn.refused.not-steady",
  ];
  // A point that stands elsewhere is the reason only where no number with its point in place was looked at.
  const plain = reasons.filter(({ shifted }) => !shifted);
  const told = (plain.length > 0 ? plain : reasons).map((reason) => reason.message);
  const first = order.flatMap((code) => told.find((reason) => reason.code === code) ?? [])[0];
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

/** Two lines as they came, for people. */
export function sampleLines(lines: readonly Observed[]): Message[] {
  const different = [...new Set(lines.map(({ shown }) => shown))];
  return different.slice(0, 2).map((mark) => message("learn.mark", { mark }));
}

function hypotheses(typed: readonly Typed[]): { place: Place; notation: Notation }[] {
  const found = new Map<string, { place: Place; notation: Notation }>();
  const keep = (place: Place, notation: Notation) =>
    found.set(JSON.stringify([place, notation]), { place, notation });
  for (const value of typed) {
    if (value.digits === "") continue;
    for (const { text } of value.lines) {
      for (const form of keysOf(runForms)) {
        if ((form === "pounds and ounces") !== value.pounds) continue;
        const runs = runsIn(text, form);
        runs.forEach((run, i) => {
          for (const notation of notationsOf(run, value)) {
            keep({ form, from: "left", ordinal: i }, notation);
            keep({ form, from: "right", ordinal: runs.length - 1 - i }, notation);
          }
        });
      }
      for (const { run, notation } of columnRuns(text, value))
        keep({ from: "column", start: run.start, end: run.end, length: text.length }, notation);
    }
  }
  return [...found.values()];
}

/** Digits of the typed value glued to other digits: then only their columns tell them apart. */
function columnRuns(text: string, value: Typed): { run: Run; notation: Notation }[] {
  if (value.digits.length < 3 || value.pounds) return [];
  const pattern = new RegExp([...value.digits].join("[.,]?"), "g");
  return [...text.matchAll(pattern)].flatMap((match) => {
    const end = match.index + match[0].length;
    const found: { run: Run; notation: Notation }[] = [];
    for (
      let start = match.index;
      start >= 0 && (start === match.index || /[0.,]/.test(text[start]!));
      start -= 1
    ) {
      const glued = /\d/.test(text[start - 1] ?? "") || /\d/.test(text[end] ?? "");
      if (!glued || !/\d/.test(text[start]!)) continue;
      const run: Run = { start, end, digits: text.slice(start, end), exponent: "" };
      for (const notation of notationsOf(run, value)) found.push({ run, notation });
    }
    return found;
  });
}

function runAt(place: Place, text: string): Run | null {
  if (place.from !== "column") {
    const runs = runsIn(text, place.form);
    return runs[place.from === "left" ? place.ordinal : runs.length - 1 - place.ordinal] ?? null;
  }
  const { start, end, length } = place;
  const digits = text.slice(start, end);
  if (text.length !== length || !/^ *[\d.,]+$/.test(digits)) return null;
  const blanks = digits.length - digits.trimStart().length;
  return { start: start + blanks, end, digits: digits.trimStart(), exponent: "" };
}

/** Numbers further from the load than this many times are none of the pan's. */
const mostTimes = 4;

function judge(
  { place, notation }: { place: Place; notation: Notation },
  texts: readonly Observed[],
  typed: readonly Typed[],
): Candidate | { refused: Message } {
  const found = texts.flatMap((observed): Placed[] => {
    const run = runAt(place, observed.text);
    const size = run && magnitudeOf(notation, run.digits, run.exponent);
    return run && size !== null ? [{ observed, run, size }] : [];
  });
  const most = Math.max(...typed.map(sizeOf));
  const shown = { typed: typed.find(({ digits }) => digits !== "")!.shown };
  if (found.filter(({ size }) => Math.abs(Number(size) - most) > 0.02 * most).length < 2)
    return { refused: message("learn.refused.stands-still", { ...shown, lines: sampleLines(texts) }) };
  const lines = withoutStrangers(found, typed);
  const byLine = new Map(lines.map((line) => [line.observed, line]));
  for (const value of typed) {
    const near = value.lines.flatMap((observed) => byLine.get(observed) ?? []);
    const told = { typed: value.shown, lines: sampleLines(value.lines) };
    const exact = near.filter((line) => saysSo(line, value));
    const reason = exact.map(({ observed, run }) =>
      value.pounds ? "yes" : shiftExplained(notation.shift ?? 0, observed.text.slice(run.end), value.unit),
    );
    const lost = found.some((line) => value.lines.includes(line.observed) && saysSo(line, value));
    if (exact.length === 0)
      return { refused: message(lost ? "learn.refused.not-steady" : "learn.refused.not-all", told) };
    if (reason.includes("other-unit")) return { refused: message("learn.refused.other-unit", told) };
    if (reason.includes("no")) return { refused: message("learn.refused.point", told) };
    const nearest = value.nearest.flatMap((observed) => byLine.get(observed) ?? []);
    const about = nearest.filter(({ size }) => Math.abs(Number(size) - sizeOf(value)) <= slack(value));
    if (about.length < nearest.length - Math.max(1, 0.15 * nearest.length))
      return { refused: message("learn.refused.not-steady", told) };
  }
  const wild = lines.filter(({ size }) => Number(size) > mostTimes * most);
  const empty = lines.filter(({ observed }) => atRest(observed) && observed.at.phase === "empty");
  const notEmpty = empty.filter(({ size }) => Number(size) > 0.3 * most);
  if (wild.length > 0.02 * lines.length || notEmpty.length > 0.2 * empty.length)
    return {
      refused: message("learn.refused.not-steady", {
        ...shown,
        lines: sampleLines((wild[0] ? wild : notEmpty).map(({ observed }) => observed)),
      }),
    };
  return { notation, lines };
}

/**
 * Leaves out kinds of lines whose number does not follow the load: at rest it is another than the one that was typed. Kinds
 * are told apart by everything but the number, and by the count of decimals.
 */
function withoutStrangers(lines: readonly Placed[], typed: readonly Typed[]): Placed[] {
  const loads = typed.filter(({ negative, digits }) => !negative && digits !== "");
  const most = Math.max(...typed.map(sizeOf));
  const kinds = new Map<string, Placed[]>();
  for (const line of lines) {
    const { observed, run, size } = line;
    const rest = observed.text.slice(0, run.start) + observed.text.slice(run.end);
    const kind = `${skeleton(rest)} ${size.split(".")[1]?.length ?? 0}`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), line]);
  }
  return [...kinds.values()]
    .filter((some) => {
      const rest = some.filter(({ observed }) => atRest(observed));
      const loaded = rest.filter(({ observed }) => observed.at.phase !== "empty");
      const empty = rest.filter(({ observed }) => observed.at.phase === "empty");
      const right = loaded.filter(({ size }) =>
        loads.some((value) => Math.abs(Number(size) - sizeOf(value)) <= 3 * slack(value)),
      );
      const wrong = empty.filter(({ size }) => Number(size) > 0.3 * most);
      return (
        (loads.length === 0 || right.length >= 0.8 * loaded.length) && wrong.length <= 0.5 * empty.length
      );
    })
    .flat()
    .sort((a, b) => a.observed.atMs - b.observed.atMs);
}

const sizeOf = ({ text }: Typed) => Math.abs(Number(text));

/** The display may tremble between the line and the eye. */
const slack = (value: Typed) => Math.max(60 * 10 ** -value.places, 0.01 * sizeOf(value));

/** Exactly what was typed; a zero needs to be a zero only, since its decimals are those of the other values. */
function saysSo({ size }: Placed, value: Typed): boolean {
  if (value.digits === "") return Number(size) === 0;
  return size === value.text.replace("-", "");
}

/**
 * One candidate for each different number. Candidates for the same number that differ on some line are kept to the lines on
 * which all agree.
 */
function distinct(found: readonly Candidate[], typed: readonly Typed[]): Candidate[] {
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
  return groups.map((group) => agreeing(group));
}

function spanIn({ lines }: Candidate, value: Typed): Run | undefined {
  for (const observed of value.lines) {
    const line = lines.find((one) => one.observed === observed && saysSo(one, value));
    if (line) return line.run;
  }
  return undefined;
}

function agreeing([best, ...others]: readonly Candidate[]): Candidate {
  const { notation, lines } = best!;
  const differs = new Set<Observed>();
  for (const other of others) {
    const sizes = new Map(other.lines.map(({ observed, size }) => [observed, size]));
    for (const { observed, size } of lines) {
      const there = sizes.get(observed);
      if (there !== undefined && Number(there) !== Number(size)) differs.add(observed);
    }
  }
  const agreed = lines.filter(({ observed }) => !differs.has(observed));
  return withZeros({ notation, lines: agreed });
}

/** So many different numbers without a single zero at their end were written without such zeros. */
const numbersWithoutZeros = 12;

/** Where zeros at the end are left out, the number gets as many decimals as the longest has. */
function withZeros({ notation, lines }: Candidate): Candidate {
  const decimals = [...new Set(lines.map(({ size }) => size))].map((size) => size.split(".")[1] ?? "");
  const places = new Set(decimals.map(({ length }) => length));
  const short = decimals.some((some) => some.endsWith("0"));
  if (places.size < 2 || short || decimals.length < numbersWithoutZeros || notation.outPlaces !== undefined)
    return { notation, lines };
  return { notation: { ...notation, outPlaces: Math.max(...places) }, lines };
}
