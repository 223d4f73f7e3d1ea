import type { Run } from "./notations.ts";
import type { NumberPart } from "./profile.ts";
import type { SignForm } from "./signs.ts";
import type { Notation } from "./written-number.ts";

/** One line with the place of its weight. */
export interface Placed {
  text: string;
  number: Pick<Run, "start" | "end">;
}

export interface Zoned {
  before: string[];
  zones: Zone[];
  after: string[];
  align: "right" | "left";
  /** total length the line is filled up to with blanks; null when it is not */
  padTo: number | null;
}

/** Blanks and, where a sign is written there, one sign right before the digits. */
const leads = { signed: /( *)([+\-\u2212]?)( *)$/, unsigned: / *$/ };

/**
 * Cuts every line into what stands before the number, the number with its padding, and what stands behind. Where
 * columns are fixed the cuts fall at the same columns, so that a blank in the place of a mark is seen as one.
 */
export function zoned(lines: readonly Placed[], signed: boolean): Zoned {
  const lead = signed ? leads.signed : leads.unsigned;
  const led = lines.map(({ text, number }) => {
    const before = text.slice(0, number.start);
    return { before, kept: before.length - lead.exec(before)![0].length };
  });
  const left = Math.max(...led.map(({ kept }) => kept));
  const leftFixed =
    led.every(
      ({ before }) =>
        before.length >= left && lead.exec(before.slice(left))![0].length === before.length - left,
    ) &&
    regular(
      lines.map(({ number }, i) => ({
        width: number.end - left,
        left: number.start - left,
        pad: padOf(led[i]!.before.slice(left)),
      })),
    );
  const from = lines.map((_, i) => (leftFixed ? left : led[i]!.kept));

  const equalLength = one(lines.map(({ text }) => text.length));
  const equalEnd = one(lines.map(({ number }) => number.end));
  let to = lines.map(({ number }) => number.end);
  let align: Zoned["align"] = "right";
  let padTo: number | null = null;
  if (leftFixed && (equalEnd ? widelyFilled(lines) : filledBehind(lines))) {
    const column = firstColumnBehind(lines);
    align = "left";
    to = lines.map(() => column);
  } else if (equalLength && (!equalEnd || lines.every(({ text }) => text.endsWith("   "))))
    padTo = lines[0]!.text.length;
  const after = lines.map(({ text }, i) => text.slice(to[i]));
  return {
    before: lines.map(({ text }, i) => text.slice(0, from[i])),
    zones: lines.map(({ text, number }, i) => ({
      left: text.slice(from[i], number.start),
      digits: text.slice(number.start, number.end),
      right: text.slice(number.end, to[i]),
    })),
    after: padTo === null ? after : after.map((text) => text.trimEnd()),
    align,
    padTo,
  };
}

/** True when what follows the numbers keeps its column while their ends move: blanks fill the field behind them. */
function filledBehind(lines: readonly Placed[]): boolean {
  const byRest = new Map<string, { starts: Set<number>; gaps: Set<number> }>();
  for (const { text, number } of lines) {
    const rest = text.slice(number.end);
    if (rest.trim() === "") continue;
    const seen = byRest.get(rest.trim()) ?? { starts: new Set(), gaps: new Set() };
    const gap = rest.length - rest.trimStart().length;
    seen.gaps.add(gap);
    seen.starts.add(number.end + gap);
    byRest.set(rest.trim(), seen);
  }
  const moved = [...byRest.values()].filter(({ starts, gaps }) => starts.size > 1 || gaps.size > 1);
  return moved.length > 0 && moved.every(({ starts }) => starts.size === 1);
}

/** Numbers of one length with a wide gap behind each: the gap is the rest of a field, longer numbers will use it. */
function widelyFilled(lines: readonly Placed[]): boolean {
  const gap = ({ text, number }: Placed) =>
    / *$/.exec(text.slice(number.end).replace(/\S.*$/s, ""))![0].length;
  return (
    one(lines.map(({ number }) => number.end - number.start)) &&
    lines.every((line) => line.text.slice(line.number.end).trim() !== "" && gap(line) >= 3)
  );
}

/** The column at which text behind the numbers begins, at the earliest. */
function firstColumnBehind(lines: readonly Placed[]): number {
  return Math.min(
    ...lines.map(({ text, number }) => {
      const rest = text.slice(number.end);
      return rest.trim() === "" ? text.length : text.length - rest.trimStart().length;
    }),
  );
}

const padOf = (text: string) => text.replace(/[+\-\u2212]/, "").length;

const one = (values: readonly number[]) => new Set(values).size === 1;

/** A field has one width, or one padding; neither means that the cut is at the wrong place. */
function regular(fields: readonly { width: number; left: number; pad: number }[]): boolean {
  return (
    one(fields.map(({ width }) => width)) ||
    one(fields.map(({ left }) => left)) ||
    one(fields.map(({ pad }) => pad))
  );
}

/** A number with everything between the text before and the text behind it. */
export interface Zone {
  /** blanks and sign before the digits: "+   ", "   -" */
  left: string;
  /** digits with marks, exponent and what wraps them */
  digits: string;
  /** blanks behind the digits that fill the field */
  right: string;
}

const signOf = (left: string) => left.replace(/ /g, "");

/** How numbers are written, from every number seen. */
export function numberStyle(
  zones: readonly Zone[],
  notation: Notation,
  sign: SignForm,
  { align, fill, anyLeading }: { align: "right" | "left"; fill: string | null; anyLeading: boolean },
): NumberPart {
  const widths = new Set(zones.map((zone) => zone.left.length + zone.digits.length + zone.right.length));
  // Numbers of one length do not show whether longer ones take from the padding or make the line longer.
  const oneLength = align === "right" && new Set(zones.map(({ digits }) => digits.length)).size === 1;
  const pads = zones.map(({ left }) => left.length - signOf(left).length);
  const signs = zones.map(({ left }) => signOf(left));
  const signed = zones.filter(({ left }) => signOf(left) !== "");
  const pinned = signed.some(({ left }) => /[+\-\u2212] /.test(left));
  const { decimalMark } = notation;
  const bare = zones.map(({ digits }) =>
    digits.replace(/[eE][+-]?\d+/, "").replace(/[[\]()<>{}+\-\u2212 ]/g, ""),
  );
  const wholes = bare.map((digits) => (decimalMark === "none" ? digits : digits.split(decimalMark)[0]!));
  const zeroPadded = !notation.pounds && wholes.some((whole) => /^0\d/.test(whole));
  const places = bare.map((digits) =>
    decimalMark === "none" || !digits.includes(decimalMark)
      ? 0
      : digits.length - 1 - digits.lastIndexOf(decimalMark),
  );
  const plusSeen = signs.filter((one) => one === "+").length;
  const plusMissing = signs.filter((one) => one === "").length;
  const counts = bare.map((digits) => digits.replace(/\D/g, ""));
  const fixed =
    zeroPadded && new Set(counts.map(({ length }) => length)).size === 1 ? counts[0]!.length : null;
  const significant = Math.max(...counts.map((digits) => digits.replace(/^0+/, "").length));
  const wrapped = sign.wraps.length > 1 || sign.wraps.some(({ before, after }) => before + after !== "");
  return {
    is: "number",
    width: widths.size === 1 && (!oneLength || zeroPadded) ? [...widths][0]! : null,
    align,
    padLeast: oneLength && !zeroPadded ? 0 : Math.min(...pads),
    padMost: Math.max(...pads),
    sign: pinned ? "pinned-left" : "beside-digits",
    signAt: pinned ? Math.min(...signed.map(({ left }) => left.search(/[+\-\u2212]/))) : 0,
    plus: plusSeen === 0 ? "never" : plusMissing === 0 ? "always" : "sometimes",
    places: [...new Set(places)].sort((a, b) => a - b),
    digits: fixed,
    auxiliary: bare.length > 0 && zones.some(({ digits }) => /\[\d\]|\d\(\d\)/.test(digits)),
    ...notation,
    ...(bare.some((digits) => /^[.,]/.test(digits)) && { noZero: true }),
    ...(fill !== null && { fill }),
    ...(wrapped && { wraps: sign.wraps }),
    ...(!sign.evident && { minus: "refused" as const }),
    ...(fixed !== null && !anyLeading && { mostDigits: significant + 1 }),
  };
}
