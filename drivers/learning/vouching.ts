import type { MassUnit } from "../../calibration/units.ts";
import { labelMeaning } from "../labels.ts";
import { unitMeaning } from "../unit-words.ts";
import { grammar } from "./grammar.ts";
import type { Placed } from "./places.ts";
import type { Mark, Part } from "./profile.ts";
import { atRest } from "./recording.ts";
import { typedLines } from "./signs.ts";
import type { Typed } from "./typed.ts";

type MarkPart = Extract<Part, { is: "mark" }>;

/** A line with the texts of its marks, in order of the line. */
interface Marked {
  line: Placed;
  texts: string[];
}

const markParts = (parts: readonly Part[]) => parts.filter((part): part is MarkPart => part.is === "mark");

function marked(parts: readonly Part[], lines: readonly Placed[]): Marked[] {
  const match = grammar(parts);
  return lines.flatMap((line) => {
    const found = match(line.observed.text);
    return found ? [{ line, texts: found.marks.map(({ text }) => text) }] : [];
  });
}

/** A place in the line whose marks could tell the sign: the marks beside typed values below zero, and beside the others. */
export interface SignPlace {
  slot: number;
  minus: string[];
  plus: string[];
  /** the marks of minus stood beside zero as well, or are a word for net: they may say that a tare is on */
  atZero: boolean;
}

const saysNet = (text: string) => labelMeaning(text.replace(/[^\p{L}]/gu, "")) === "net";

/** Every place whose marks differ between what was typed below zero and what was typed above. */
export function signPlaces(
  parts: readonly Part[],
  lines: readonly Placed[],
  typed: readonly Typed[],
): SignPlace[] {
  const compared = typedLines(lines, typed);
  const read = new Map(marked(parts, lines).map((one) => [one.line, one.texts]));
  const textsOf = (slot: number, negative: boolean) => [
    ...new Set(
      compared.flatMap(({ value, line }) =>
        value.negative === negative ? (read.get(line)?.[slot] ?? []) : [],
      ),
    ),
  ];
  return markParts(parts).flatMap((_, slot) => {
    const [minus, plus] = [textsOf(slot, true), textsOf(slot, false)];
    const apart = minus.length > 0 && plus.length > 0 && !minus.some((text) => plus.includes(text));
    const zeros = [...read].filter(([{ size }, texts]) => Number(size) === 0 && minus.includes(texts[slot]!));
    return apart ? [{ slot, minus, plus, atZero: zeros.length > 0 || minus.some(saysNet) }] : [];
  });
}

/** Readings at least this share of the load, and no further from each other than this share, belong together. */
const enoughLoad = 0.05;
const closeShare = 0.25;
const neighbourMs = 3000;

/**
 * Keeps the marks that are known not to change what the number means: those beside typed values, and those whose lines go on
 * from such a line without a jump. A mark seen beside small numbers only is known up to their size; any other is left out,
 * and a line with it is unknown. `sign` is the place that tells the sign, where a mark does.
 */
export function vouched(
  parts: readonly Part[],
  lines: readonly Placed[],
  typed: readonly Typed[],
  sign: SignPlace | null,
): Part[] {
  const read = marked(parts, lines);
  const compared = new Set(typedLines(lines, typed).map(({ line }) => line));
  const load = Math.max(...typed.map(({ text }) => Math.abs(Number(text))));
  const belowTyped = typed.some(({ negative }) => negative);
  const pointless = parts.some((part) => part.is === "number" && part.impliedPlaces !== null);
  let slot = -1;
  return parts.map((part): Part => {
    if (part.is !== "mark") return part;
    slot += 1;
    const here = slot;
    const isSign = sign?.slot === here;
    const known = new Map<string, Mark["sign"]>();
    for (const { line, texts } of read) if (compared.has(line)) known.set(texts[here]!, undefined);
    if (isSign) for (const text of sign.minus) known.set(text, "minus");
    for (let grew = true; grew; ) {
      grew = false;
      for (const { text } of part.marks) {
        if (known.has(text) || inPlaceOfUnit(text, [...known.keys()], typed[0]!.unit)) continue;
        const [plus, minus] = ["plus", "minus"].map((to) =>
          closePairs(read, here, text, known, to === "minus", { load, belowTyped }),
        ) as [number, number];
        const count = read.filter(({ texts }) => texts[here] === text).length;
        const enough = count < 4 ? 1 : 2;
        if (plus < enough && !(isSign && minus >= enough)) continue;
        if (isSign && plus >= enough && minus >= enough) continue;
        known.set(text, isSign && minus >= enough ? "minus" : undefined);
        grew = true;
      }
    }
    const marks = part.marks.flatMap((mark): Mark[] => {
      if (known.has(mark.text))
        return [{ ...mark, ...(known.get(mark.text) && { sign: known.get(mark.text) }) }];
      const sizes = read
        .filter(({ texts }) => texts[here] === mark.text)
        .map(({ line }) => Number(line.size));
      const most = Math.max(0, ...sizes);
      if (sizes.length === 0 || most > enoughLoad * load || strays(read, here, mark.text, load)) return [];
      if (isOtherUnit(mark.text, typed[0]!.unit)) return [];
      // beside digits without a point it may be a code of the decimals
      if (pointless && /\d/.test(mark.text)) return [];
      // Whether such a mark tells the sign is not known while no value below zero was typed.
      return [{ ...mark, upTo: belowTyped && sign === null ? most : 0 }];
    });
    return { is: "mark", marks };
  });
}

/** A word that stands where the owner's unit stands beside the values typed: another quantity, however close its number is. */
function inPlaceOfUnit(mark: string, known: readonly string[], unit: MassUnit): boolean {
  const word = mark.replace(/[^\p{L}%\u2030]/gu, "").toLowerCase();
  const isUnit = (text: string) => text.replace(/[^\p{L}]/gu, "").toLowerCase() === unit;
  return word !== "" && word !== unit && known.some(isUnit);
}

/** A unit of weight that is not the owner's, or no unit of weight: beside zero it is seen without changing the number. */
function isOtherUnit(mark: string, unit: MassUnit): boolean {
  // a letter alone beside others is more often a mark of its own
  const words = [mark.trim(), ...mark.split(/\s+/).filter((word) => word.length > 1)];
  return words.some((word) => {
    const meaning = unitMeaning(word);
    return meaning !== null && ("notWeight" in meaning || meaning.unit !== unit);
  });
}

/** One mark at one place of the line, counted over the places that carry marks. */
export interface MarkAt {
  slot: number;
  text: string;
}

const marksOf = (parts: readonly Part[]): (MarkAt & Mark)[] =>
  markParts(parts).flatMap(({ marks }, slot) => marks.map((mark) => ({ slot, ...mark })));

/** The marks that were seen beside small numbers only; signs do not count. */
export const nearZeroMarks = (parts: readonly Part[], sign: SignPlace | null): MarkAt[] =>
  marksOf(parts).filter(({ slot, upTo }) => slot !== sign?.slot && upTo !== undefined);

/** The lines with one of these marks. */
export const linesWith = (parts: readonly Part[], lines: readonly Placed[], marks: readonly MarkAt[]) =>
  marked(parts, lines)
    .filter(({ texts }) => marks.some(({ slot, text }) => texts[slot] === text))
    .map(({ line }) => line);

/** The parts without these marks: a line with one of them is unknown. */
export function withoutMarks(parts: readonly Part[], marks: readonly MarkAt[]): Part[] {
  const places = markParts(parts);
  return parts.map((part) => {
    if (part.is !== "mark") return part;
    const slot = places.indexOf(part);
    const dropped = marks.filter((mark) => mark.slot === slot).map(({ text }) => text);
    return { ...part, marks: part.marks.filter(({ text }) => !dropped.includes(text)) };
  });
}

/** A line near zero between two of the load comes from elsewhere, such as from another balance. */
function strays(read: readonly Marked[], slot: number, text: string, load: number): boolean {
  const loaded = (one: Marked | undefined) => one !== undefined && Number(one.line.size) > enoughLoad * load;
  return read.some(
    ({ texts, line }, i) =>
      texts[slot] === text && atRest(line.observed) && loaded(read[i - 1]) && loaded(read[i + 1]),
  );
}

/** Lines with such a mark below which nothing is concluded. */
const fewestHeld = 3;

/**
 * The marks that never come at rest and whose lines repeat the number of the line before, until one without them shows another
 * load: the balance holds an old number while the pan moves.
 */
export function heldMarks(
  parts: readonly Part[],
  lines: readonly Placed[],
  typed: readonly Typed[],
): MarkAt[] {
  const read = marked(parts, lines);
  const load = Math.max(...typed.map(({ text }) => Math.abs(Number(text))));
  const size = (i: number) => Number(read[i]!.line.size);
  return marksOf(parts).filter(({ slot, text }) => {
    const here = read.flatMap(({ texts }, i) => (i > 0 && texts[slot] === text ? [i] : []));
    if (here.length < fewestHeld) return false;
    if (here.some((i) => atRest(read[i]!.line.observed) || size(i) !== size(i - 1))) return false;
    const ends = here.filter((i) => read[i + 1] && read[i + 1]!.texts[slot] !== text);
    return ends.some((i) => Math.abs(size(i + 1) - size(i)) > enoughLoad * load);
  });
}

/**
 * How many lines with this mark go on, one after the other and without a jump, from a line with a known mark, if their sign is
 * this.
 */
function closePairs(
  read: readonly Marked[],
  slot: number,
  text: string,
  known: ReadonlyMap<string, Mark["sign"]>,
  minus: boolean,
  { load, belowTyped }: { load: number; belowTyped: boolean },
): number {
  const value = ({ line, texts }: Marked) => {
    const negative = texts[slot] === text ? minus : known.get(texts[slot]!) === "minus";
    return (negative ? -1 : 1) * Number(line.size);
  };
  const close = (one: Marked, other: Marked) => {
    const [a, b] = [one.line.observed, other.line.observed];
    if (Math.abs(a.atMs - b.atMs) > neighbourMs) return false;
    // A weight that was tared and lifted goes below zero from one step to the next.
    if (a.at.index !== b.at.index && [a, b].some(({ at }) => at.phase === "below-zero")) return false;
    if (a.at.phase === "below-zero" && !belowTyped) return false;
    const [x, y] = [value(one), value(other)];
    const most = Math.max(Math.abs(x), Math.abs(y));
    return most >= enoughLoad * load && Math.abs(x - y) <= closeShare * most;
  };
  const reached = new Set<number>();
  const follow = (step: 1 | -1) => {
    for (let i = step > 0 ? 1 : read.length - 2; i >= 0 && i < read.length; i += step) {
      const [one, before] = [read[i]!, read[i - step]!];
      if (one.texts[slot] !== text || !close(one, before)) continue;
      if (known.has(before.texts[slot]!) || reached.has(i - step)) reached.add(i);
    }
  };
  follow(1);
  follow(-1);
  return reached.size;
}

/** Words of the trade for net and gross among marks; a mark that came with the tare is kept as it is written. */
export function labelled(parts: readonly Part[], unit: MassUnit): Part[] {
  const isUnit = (word: string) => {
    const meaning = unitMeaning(word);
    return meaning !== null && "unit" in meaning && meaning.unit === unit;
  };
  return parts.map((part): Part => {
    if (part.is !== "mark") return part;
    const words = part.marks.map(({ text }) => text.replace(/[^\p{L}]/gu, ""));
    // The g of grams is no label.
    const named = words.map((word) =>
      word === word.toLowerCase() && isUnit(word) ? null : labelMeaning(word),
    );
    if (!named.some((label) => label === "net" || label === "gross")) return part;
    return {
      is: "mark",
      marks: part.marks.map((mark, i) => ({
        ...mark,
        ...((named[i] === "net" || named[i] === "gross") && { label: named[i] }),
      })),
    };
  });
}
