import { tally } from "./observed.ts";
import type { Mark, Part } from "./profile.ts";

/** Stand-ins for one digit of a changing number of fixed and of free length, and for the unit. */
const DIGIT = "\uE000";
const DIGITS = "\uE001";

/** More different strings of digits than this at one place are a counter or a clock, not a mark. */
const mostMarks = 8;

export interface Slotted {
  parts: Part[];
  /** false when the text changed in more ways than marks do */
  explained: boolean;
}

/**
 * The parts of a piece of line that was seen in several forms: what stays the same as text, what changes as marks to
 * be judged, changing digits as digits.
 */
export function partsOf(strings: readonly string[]): Slotted {
  const { texts, lengths } = digitsStoodIn(strings);
  const different = [...tally(texts).keys()];
  const lengthsSeen = new Set(different.map((text) => text.length));
  const spans = lengthsSeen.size === 1 ? changingSpans(different) : wholeSpan(different);
  const parts: Part[] = [];
  let explained = true;
  let at = 0;
  for (const span of spans) {
    const first = different[0]!;
    parts.push(...literal(first.slice(at, span.from), lengths));
    const alternatives = [
      ...new Set(different.map((text) => text.slice(span.from, text.length - span.fromEnd))),
    ];
    if (alternatives.length > mostMarks || alternatives.some((text) => /[\uE000\uE001]/.test(text)))
      explained = false;
    parts.push({
      is: "mark",
      marks: alternatives.map((text): Mark => ({ text, means: "nothing", unit: false })),
    });
    at = first.length - span.fromEnd;
  }
  parts.push(...literal((different[0] ?? "").slice(at), lengths));
  return { parts: parts.filter((part) => part.is !== "text" || part.text !== ""), explained };
}

/** Replaces digits that change with every line by stand-ins. */
function digitsStoodIn(strings: readonly string[]) {
  const lengths = { least: 1, most: 1 };
  const digitKinds = new Set(strings.map((text) => (text.match(/\d+/g) ?? []).join(" ")));
  const kinds = new Set(strings.map((text) => text.replace(/\d+/g, "9")));
  if (digitKinds.size <= mostMarks || kinds.size > mostMarks) return { texts: [...strings], lengths };
  const runs = strings.flatMap((text) => text.match(/\d+/g) ?? []);
  const sizes = new Set(strings.map((text) => (text.match(/\d+/g) ?? []).map((d) => d.length).join(" ")));
  lengths.least = Math.min(...runs.map((digits) => digits.length));
  lengths.most = Math.max(...runs.map((digits) => digits.length));
  const texts =
    sizes.size === 1
      ? strings.map((text) => text.replace(/\d/g, DIGIT))
      : strings.map((text) => text.replace(/\d+/g, DIGITS));
  return { texts, lengths };
}

function literal(text: string, lengths: { least: number; most: number }): Part[] {
  return (text.match(/\uE000+|\uE001|[^\uE000\uE001]+/g) ?? []).map((piece): Part => {
    if (piece.startsWith(DIGIT)) return { is: "digits", least: piece.length, most: piece.length };
    if (piece === DIGITS) return { is: "digits", least: lengths.least, most: lengths.most };
    return { is: "text", text: piece };
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
  for (let i = 0; i + 1 < spans.length; ) {
    const [a, b] = [spans[i]!, spans[i + 1]!];
    if (together(different, a, b)) {
      spans = [...spans.slice(0, i), { from: a.from, fromEnd: b.fromEnd }, ...spans.slice(i + 2)];
    } else i += 1;
  }
  return spans;
}

function together(different: readonly string[], a: Span, b: Span): boolean {
  const cut = (span: Span) => different.map((text) => text.slice(span.from, text.length - span.fromEnd));
  const [left, right] = [cut(a), cut(b)];
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
