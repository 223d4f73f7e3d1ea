import { keysOf } from "../../calibration/keyed.ts";
import { notationsOf, type Run, type RunForm, runForms, runsIn } from "./notations.ts";
import type { Observed } from "./recording.ts";
import type { Typed } from "./typed.ts";
import type { Notation } from "./written-number.ts";

/** One line with the number that a hypothesis takes for the weight. */
export interface Placed {
  observed: Observed;
  run: Run;
  /** decimal text without sign */
  size: string;
}

/** Where the number stands: the n-th of its kind from one end, or in fixed columns. */
export type Place =
  | { form: RunForm; from: "left" | "right"; ordinal: number }
  | { from: "column"; start: number; end: number; length: number };

/** A guess at the number: where it stands and how it is written. */
export interface Hypothesis {
  place: Place;
  notation: Notation;
}

/** Every guess that gives one of the typed values on one of its lines. */
export function hypotheses(typed: readonly Typed[]): Hypothesis[] {
  const found = new Map<string, Hypothesis>();
  const keep = (place: Place, notation: Notation) =>
    found.set(JSON.stringify([place, notation]), { place, notation });
  for (const value of typed) {
    if (value.digits === "") continue;
    for (const { text } of value.lines) {
      for (const form of keysOf(runForms)) {
        if ((form === "pounds and ounces") !== value.pounds) continue;
        const runs = runsIn(text, form);
        runs.forEach((run, i) => {
          if (isFractionOf(run, value, text)) return;
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

/** True when the run lies behind the mark of decimals of a number that says the typed value as a whole. */
function isFractionOf(run: Run, { text: typed }: Typed, text: string): boolean {
  const whole = runsIn(text).find(({ start, end }) => start <= run.start && run.end <= end);
  if (!whole || !/[.,]/.test(text.slice(whole.start, run.start))) return false;
  return Number(whole.digits.replace(",", ".")) === Math.abs(Number(typed));
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
      if (isFractionOf(run, value, text)) continue;
      for (const notation of notationsOf(run, value)) found.push({ run, notation });
    }
    return found;
  });
}

/** The number at this place of the line, or null. */
export function runAt(place: Place, text: string): Run | null {
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
