import type { MassUnit } from "../../calibration/units.ts";
import { type Quantity, unitMeaning } from "../unit-words.ts";

/** Stands for the unit while the parts of a line are worked out; one per character, so that columns stay. */
export const UNIT = "\uE002";

export interface UnitPlace {
  word: string;
  unit: MassUnit;
  side: "before" | "after";
}

export interface UnitFound {
  place: UnitPlace | null;
  /** what the number is when it is no weight, such as a count of pieces */
  notWeight: Quantity | null;
}

const words = /[^\s\d,;:=<>()[\]\x00-\x1f]+/g;

/**
 * The unit of mass beside the number: a word of the trade that stands in the same place in at least a third of the
 * lines (it may be missing while the number moves). The word right behind the number is looked at first.
 */
export function unitPlace(before: readonly string[], after: readonly string[]): UnitFound {
  for (const side of ["after", "before"] as const) {
    const texts = side === "after" ? after : before;
    const counts = new Map<string, { lines: number; nearness: number }>();
    for (const text of texts) {
      const found: string[] = text.match(words) ?? [];
      if (side === "before") found.reverse();
      new Set(found).forEach((word) => {
        const had = counts.get(word) ?? { lines: 0, nearness: found.indexOf(word) };
        counts.set(word, { lines: had.lines + 1, nearness: Math.min(had.nearness, found.indexOf(word)) });
      });
    }
    const known = [...counts]
      .filter(([word, { lines }]) => lines >= texts.length / 3 && unitMeaning(word) !== null)
      .sort((a, b) => a[1].nearness - b[1].nearness || b[1].lines - a[1].lines);
    for (const [word, { nearness }] of known) {
      const meaning = unitMeaning(word)!;
      if ("unit" in meaning) return { place: { word, unit: meaning.unit, side }, notWeight: null };
      if (side === "after" && nearness === 0 && counts.get(word)!.lines >= 0.9 * texts.length)
        return { place: null, notWeight: meaning.notWeight };
    }
  }
  return { place: null, notWeight: null };
}

/** The text with its unit replaced by stand-ins: the one nearest to the number. */
export function unitStoodIn(text: string, { word, side }: UnitPlace): string {
  const places = [...text.matchAll(words)].filter((match) => match[0] === word).map((match) => match.index);
  const at = side === "after" ? places[0] : places.at(-1);
  return at === undefined
    ? text
    : text.slice(0, at) + UNIT.repeat(word.length) + text.slice(at + word.length);
}
