import type { Mark, Part } from "./profile.ts";

/** Stand-ins, one character each, for a number with a mark of decimals and for each run of changing digits. */
const NUMBER = "\uE001";
const firstDigits = 0xe100;

/** More different strings at one place are no marks: a counter, a clock, or something that is not understood. */
const mostMarks = 8;

export interface Slotted {
  parts: Part[];
  /** false when the text changed in more ways than marks do */
  explained: boolean;
}

/**
 * The parts of a piece of line that was seen in several forms: what stays the same as text, what changes as marks to
 * be judged, changing digits as digits, other weights as numbers that are not read.
 */
export function partsOf(strings: readonly string[]): Slotted {
  const { texts, runs } = digitsStoodIn(strings);
  const different = [...new Set(texts)];
  const first = different[0] ?? "";
  const lengthsSeen = new Set(different.map((text) => text.length));
  const spans = lengthsSeen.size <= 1 ? changingSpans(different) : wholeSpan(different);
  const parts: Part[] = [];
  let explained = true;
  let at = 0;
  for (const span of spans) {
    parts.push(...literal(first.slice(at, span.from), runs));
    const alternatives = [
      ...new Set(different.map((text) => text.slice(span.from, text.length - span.fromEnd))),
    ];
    if (alternatives.length > mostMarks || alternatives.some((text) => /[\uE001\uE100-\uE1FF]/.test(text)))
      explained = false;
    parts.push({
      is: "mark",
      marks: alternatives.map((text): Mark => ({ text, means: "nothing", unit: false })),
    });
    at = first.length - span.fromEnd;
  }
  parts.push(...literal(first.slice(at), runs));
  return { parts, explained };
}

const otherWeight = / *[+\-\u2212]? *\d+(?:[.,']\d+)+(?:\[\d\])? */g;

interface Run {
  least: number;
  most: number;
}

/** Replaces numbers with a mark of decimals, and the digits of counters and clocks, by stand-ins. */
function digitsStoodIn(strings: readonly string[]): { texts: string[]; runs: Run[] } {
  const numbers = strings.map((text) => text.match(otherWeight) ?? []);
  // A number that never changed is known as it was seen only.
  const constant = (ordinal: number) => new Set(numbers.map((found) => found[ordinal])).size === 1;
  const numbered = strings.map((text) => {
    let ordinal = -1;
    return text.replace(otherWeight, (found) => {
      ordinal += 1;
      return constant(ordinal) ? found : NUMBER;
    });
  });
  const digits = numbered.map((text) => text.match(/\d+/g) ?? []);
  const most = Math.max(0, ...digits.map((found) => found.length));
  const runs: Run[] = [];
  for (let ordinal = 0; ordinal < most; ordinal += 1) {
    const here = digits.flatMap((found) => found[ordinal] ?? []);
    const changing = new Set(here).size > mostMarks || wheel(digits, ordinal);
    const sizes = here.map((found) => found.length);
    runs.push(changing ? { least: Math.min(...sizes), most: Math.max(...sizes) } : { least: 0, most: 0 });
  }
  const texts = numbered.map((text) => {
    let ordinal = -1;
    return text.replace(/( *[+\-\u2212]? *)(\d+)/g, (found, lead: string) => {
      ordinal += 1;
      const { least, most } = runs[ordinal]!;
      if (most === 0) return found;
      // Digits that grow and shrink are a whole number in a field of its own.
      return least < most ? NUMBER : lead + String.fromCharCode(firstDigits + ordinal);
    });
  });
  return { texts, runs };
}

/** Hours and minutes change too seldom to be seen changing; two digits beside a faster pair belong to its clock. */
function wheel(digits: readonly (readonly string[])[], ordinal: number): boolean {
  const pairs = (at: number) => digits.flatMap((found) => found[at] ?? []);
  const clockLike = (at: number) => {
    const here = pairs(at);
    return here.length > 0 && here.every((found) => found.length === 2);
  };
  if (!clockLike(ordinal)) return false;
  return [ordinal + 1, ordinal + 2].some((at) => clockLike(at) && new Set(pairs(at)).size > mostMarks);
}

function literal(text: string, runs: readonly Run[]): Part[] {
  return (text.match(/\uE001|[\uE100-\uE1FF]|[^\uE001\uE100-\uE1FF]+/g) ?? []).map((piece): Part => {
    if (piece === NUMBER) return { is: "other-number" };
    const run = runs[piece.charCodeAt(0) - firstDigits];
    return run ? { is: "digits", ...run } : { is: "text", text: piece };
  });
}

interface Span {
  from: number;
  /** characters that follow it */
  fromEnd: number;
}

/** Strings of one length: runs of columns that change. Runs that always change together are one mark. */
function changingSpans(different: readonly string[]): Span[] {
  const length = different[0]?.length ?? 0;
  const changes = (column: number) => new Set(different.map((text) => text[column])).size > 1;
  let spans: Span[] = [];
  for (let column = 0; column < length; column += 1) {
    if (!changes(column)) continue;
    const last = spans.at(-1);
    if (last && length - last.fromEnd === column) last.fromEnd -= 1;
    else spans.push({ from: column, fromEnd: length - column - 1 });
  }
  spans = spans.flatMap((span) => independent(different, span));
  for (let i = 0; i + 1 < spans.length; ) {
    const [a, b] = [spans[i]!, spans[i + 1]!];
    if (together(different, a, b)) {
      spans = [...spans.slice(0, i), { from: a.from, fromEnd: b.fromEnd }, ...spans.slice(i + 2)];
    } else i += 1;
  }
  return spans;
}

const cutAt = (different: readonly string[], { from, fromEnd }: Span) =>
  different.map((text) => text.slice(from, text.length - fromEnd));

/** Two marks side by side of which every combination was seen are two marks, not one. */
function independent(different: readonly string[], span: Span): Span[] {
  const length = different[0]!.length;
  const size = (part: Span) => new Set(cutAt(different, part)).size;
  for (let at = span.from + 1; at < length - span.fromEnd; at += 1) {
    const [a, b] = [
      { from: span.from, fromEnd: length - at },
      { from: at, fromEnd: span.fromEnd },
    ];
    if (size(a) > 1 && size(b) > 1 && size(a) * size(b) === size(span))
      return [...independent(different, a), ...independent(different, b)];
  }
  return [span];
}

function together(different: readonly string[], a: Span, b: Span): boolean {
  if (
    cutAt(different, { from: a.from, fromEnd: b.fromEnd }).some((text) => /[\uE001\uE100-\uE1FF]/.test(text))
  )
    return false;
  const [left, right] = [cutAt(different, a), cutAt(different, b)];
  const pairs = new Set(left.map((text, i) => `${text}\n${right[i]}`)).size;
  return pairs === new Set(left).size && pairs === new Set(right).size;
}

/** Strings of several lengths: one mark, from where they first differ to where they last do. */
function wholeSpan(different: readonly string[]): Span[] {
  const shortest = Math.min(...different.map((text) => text.length));
  const first = different[0]!;
  let from = 0;
  while (from < shortest && different.every((text) => text[from] === first[from])) from += 1;
  let fromEnd = 0;
  while (
    fromEnd < shortest - from &&
    different.every((text) => text.at(-1 - fromEnd) === first.at(-1 - fromEnd))
  )
    fromEnd += 1;
  return [{ from, fromEnd }];
}
