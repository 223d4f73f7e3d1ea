import { marksIn, type NumberRun, numbersIn } from "./numbers.ts";
import { atRest, median, type Observed, skeleton, tally } from "./observed.ts";

export interface WeightLine {
  observed: Observed;
  number: NumberRun;
}

export interface WeightCandidate {
  /** which number of the line it is, counted from 0 */
  ordinal: number;
  lines: WeightLine[];
}

type Series = { ordinal: number; count: number; lines: WeightLine[] };

/**
 * The numbers that grew when the weight was put on and fell when it was taken off. Clocks, counters and identities
 * do not; a gross and a net weight both do, then there are two candidates and the owner is asked.
 */
export function weightCandidates(texts: readonly Observed[]): WeightCandidate[] {
  // A whole number that is grouped when large has no mark when small: then marks cannot tell numbers apart.
  const changing = withoutLabels(texts);
  const byMark = candidatesBy(changing, ({ digits }) => marksIn(digits).at(-1) ?? "none");
  return byMark.length > 0 ? byMark : candidatesBy(changing, () => "any");
}

/** Leaves out kinds of line that came at rest with and without the weight and in which no number followed it. */
function withoutLabels(texts: readonly Observed[]): Observed[] {
  const kinds = new Map<string, Observed[]>();
  for (const text of texts) kinds.set(skeleton(text.text), [...(kinds.get(skeleton(text.text)) ?? []), text]);
  return [...kinds.values()].flatMap((some) => {
    const rest = some.filter(atRest);
    const loaded = rest.filter(({ at }) => at.phase !== "empty").length;
    if (loaded === 0 || loaded === rest.length) return some;
    const numbers = some.map((observed) => ({ observed, numbers: numbersIn(observed.text) }));
    const most = Math.max(...numbers.map(({ numbers }) => numbers.length));
    const follows = Array.from({ length: most }, (_, ordinal) =>
      followsLoad(
        numbers.flatMap(({ observed, numbers }) => {
          const number = numbers[ordinal];
          return number ? [{ observed, number }] : [];
        }),
      ),
    );
    return follows.includes(true) ? some : [];
  });
}

function candidatesBy(texts: readonly Observed[], kind: (number: NumberRun) => string): WeightCandidate[] {
  const series = new Map<string, Series>();
  for (const observed of texts) {
    if (observed.at.phase === "overloaded") continue;
    const numbers = numbersIn(observed.text);
    numbers.forEach((number, ordinal) => {
      const key = `${numbers.length} ${ordinal} ${kind(number)}`;
      const here = series.get(key) ?? { ordinal, count: numbers.length, lines: [] };
      here.lines.push({ observed, number });
      series.set(key, here);
    });
  }
  const following = [...series.values()].filter(({ lines }) => followsLoad(lines));
  const most = Math.max(0, ...following.map(({ lines }) => lines.length));
  // Marks with a digit in them change the count of numbers in a line; the commonest count is taken.
  const count = following.find(({ lines }) => lines.length === most)?.count;
  return following
    .filter((one) => one.count === count && one.lines.length >= 0.5 * most)
    .map(({ ordinal, lines }) => ({ ordinal, lines: withoutStrangers(lines) }));
}

function spread(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const cut = Math.floor(sorted.length / 10);
  return (sorted.at(-1 - cut) ?? 0) - (sorted[cut] ?? 0);
}

/** Far more at rest with the weight on than at rest without. Needs a line of each. */
function followsLoad(lines: readonly WeightLine[]): boolean {
  const at = (loaded: boolean) =>
    lines
      .filter(({ observed }) => atRest(observed) && (observed.at.phase !== "empty") === loaded)
      .map(({ number }) => number.value);
  const without = at(false);
  const withWeight = at(true);
  if (without.length === 0 || withWeight.length === 0) return false;
  const rise = median(withWeight) - median(without);
  return rise > 0 && rise > 5 * Math.max(spread(without), spread(withWeight));
}

/** Leaves out lines that only look alike: labels whose number stands still, and single torn lines. */
function withoutStrangers(lines: readonly WeightLine[]): WeightLine[] {
  const kinds = new Map<string, WeightLine[]>();
  for (const line of lines) {
    const kind = skeleton(line.observed.text);
    kinds.set(kind, [...(kinds.get(kind) ?? []), line]);
  }
  const rests = (some: readonly WeightLine[], loaded: boolean) =>
    some.filter(({ observed }) => atRest(observed) && (observed.at.phase !== "empty") === loaded).length;
  const known = new Set<string>();
  for (const some of kinds.values())
    if (rests(some, true) + rests(some, false) > 0) for (const { number } of some) known.add(form(number));
  const kept = [...kinds.values()].flatMap((some) => {
    if (rests(some, true) > 1 && rests(some, false) > 1 && !followsLoad(some)) return [];
    return some.filter(({ number }) => known.has(form(number)));
  });
  return withoutTorn(kept).sort((a, b) => a.observed.atMs - b.observed.atMs);
}

/**
 * Leaves out lines whose columns were seen once or twice among many: torn or spoiled on the way. What is learned from
 * the others decides later whether they are read.
 */
function withoutTorn(lines: readonly WeightLine[]): WeightLine[] {
  if (lines.length < 40) return [...lines];
  const columns = ({ observed }: WeightLine) =>
    observed.text
      .replace(/\d/g, "9")
      .replace(/[+\-\u2212](?= *9)/g, " ")
      .replace(/^ +| +(?=9)/g, " ");
  const counts = tally(lines.map(columns));
  const least = lines.length < 200 ? 2 : 3;
  return lines.filter((line) => counts.get(columns(line))! >= least);
}

/** Decimals where a mark is sent; the mark alone says nothing about an identity without one. */
function form({ digits }: NumberRun): string {
  const mark = marksIn(digits).at(-1);
  if (mark === undefined) return "none";
  const decimals = digits.replace(/[[\]]/g, "").length - digits.lastIndexOf(mark);
  return `${mark}${decimals}`;
}
