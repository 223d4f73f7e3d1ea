import { saysSo } from "./hypothesis-check.ts";
import type { Placed } from "./places.ts";
import type { Observed } from "./recording.ts";
import type { Typed } from "./typed.ts";

/** What stands right before and behind the digits, and what it says about the sign. */
export interface Wrap {
  before: string;
  after: string;
  minus: boolean;
}

/** How the sign is written, and what the line says about it by that. */
export interface SignForm {
  is: "before" | "behind" | "brackets" | "mark";
  /** false when no minus was seen that can be trusted: a line with one is refused */
  evident: boolean;
  wraps: Wrap[];
}

const isMinus = (character: string | undefined) => character === "-" || character === "\u2212";
/** A mark elsewhere in the line tells the sign. */
export const signByMark: SignForm = {
  is: "mark",
  evident: false,
  wraps: [{ before: "", after: "", minus: false }],
};

/** The owner says that a minus stands before the digits, though none was seen. */
export const minusTold: SignForm = { ...signByMark, is: "before", evident: true };

/** Minus signs in the line outside its number. */
export const dashesBeside = ({ observed: { text }, run }: Placed) =>
  (text.slice(0, run.start) + text.slice(run.end)).match(/[-\u2212]/g)?.length ?? 0;

/** A sign before the digits, with what fills the field between. */
const minusBefore = /([+\-\u2212])(?:([ *_#~=.:/])\2*)?$/;
/** A sign behind the digits; one right before other digits is theirs. */
const signBehind = /^ {0,2}[+\-\u2212](?!\d)/;
const behindOf = ({ observed: { text }, run }: Placed) => signBehind.exec(text.slice(run.end))?.[0] ?? "";
const closing: Record<string, string> = { "(": ")", "[": "]", "<": ">", "{": "}" };

/** Whether this line says minus, if signs are written in this form. */
export function saysMinus(form: SignForm["is"], line: Placed): boolean {
  const { text } = line.observed;
  const { run } = line;
  if (form === "mark") return false;
  if (form === "before") return isMinus(minusBefore.exec(text.slice(0, run.start))?.[1]);
  if (form === "behind") return isMinus(behindOf(line).at(-1));
  const open = text[run.start - 1] ?? "";
  return closing[open] !== undefined && text[run.end] === closing[open];
}

/** Lines that say exactly what was typed, by the value typed: those nearest to the moment it was read off. */
export function typedLines(
  lines: readonly Placed[],
  typed: readonly Typed[],
): { value: Typed; line: Placed }[] {
  const byLine = new Map(lines.map((line) => [line.observed, line]));
  return typed.flatMap((value) => {
    const exact = value.lines.flatMap((observed: Observed) => {
      const line = byLine.get(observed);
      const isRead = line && value.digits !== "" && saysSo(line, value);
      return isRead ? [{ value, line, nearest: value.nearest.includes(observed) }] : [];
    });
    const nearest = exact.filter((one) => one.nearest);
    return nearest.length > 0 ? nearest : exact.slice(0, 1);
  });
}

/**
 * The forms of the sign that agree with every typed value; none when a mark elsewhere in the line must tell it. Without a typed value below zero a minus is believed only where it stands before the digits or
 * behind them, was seen, and never while a weight was being put on.
 */
export function signForms(lines: readonly Placed[], typed: readonly Typed[]): SignForm[] {
  const compared = typedLines(lines, typed);
  const forms = ["before", "behind", "brackets"] as const;
  const agreeing = forms.filter((form) =>
    compared.every(({ value, line }) => saysMinus(form, line) === value.negative),
  );
  if (typed.some(({ negative }) => negative))
    return agreeing.map((is) => ({ is, evident: true, wraps: wrapsOf(is, lines) }));
  const most = Math.max(...compared.map(({ line }) => Number(line.size)));
  const wrong = ({ observed: { at }, size }: Placed) =>
    ["putting-on", "loaded", "touched", "at-rest"].includes(at.phase) && Number(size) > 0.1 * most;
  const seen = (["before", "behind"] as const).filter((form) => {
    const minus = lines.filter((line) => saysMinus(form, line));
    return agreeing.includes(form) && minus.length > 1 && !minus.some(wrong);
  });
  return seen.length > 0
    ? seen.map((is) => ({ is, evident: true, wraps: wrapsOf(is, lines) }))
    : [{ is: "before", evident: false, wraps: [noWrap] }];
}

const noWrap: Wrap = { before: "", after: "", minus: false };

/** What stands around the digits, wherever it is a sign. A column of its own, blank when there is no sign, is one. */
function wrapsOf(form: SignForm["is"], lines: readonly Placed[]): Wrap[] {
  if (form === "before") return [noWrap];
  const width = Math.max(...lines.map((line) => signOf(form, line).length));
  const blank = hasOwnColumn(form, lines, width) ? " ".repeat(width) : "";
  const wraps = lines.map((line): Wrap => {
    const minus = saysMinus(form, line);
    const before = minus && form === "brackets" ? line.observed.text[line.run.start - 1]! : "";
    return { before, after: signOf(form, line) || blank, minus };
  });
  return [...new Map(wraps.map((wrap) => [JSON.stringify(wrap), wrap])).values()];
}

/** What stands behind the digits as their sign; "" where nothing does. */
function signOf(form: SignForm["is"], line: Placed): string {
  if (form === "behind") return behindOf(line);
  return saysMinus(form, line) ? line.observed.text[line.run.end]! : "";
}

/** True when blanks keep the place of the sign behind the digits: then the rest of the lines is the same. */
function hasOwnColumn(form: SignForm["is"], lines: readonly Placed[], width: number): boolean {
  const rest = (line: Placed, skip: number) =>
    line.observed.text
      .slice(line.run.end + skip)
      .replace(/\d/g, "9")
      .trimEnd();
  const withSign = lines.filter((line) => signOf(form, line) !== "");
  const without = lines.filter((line) => !withSign.includes(line));
  const blanks = " ".repeat(width);
  if (without.some(({ observed: { text }, run }) => text.slice(run.end, run.end + width) !== blanks))
    return false;
  const signed = new Set(withSign.map((line) => rest(line, width)));
  const kept = without.filter((line) => signed.has(rest(line, width))).length;
  const dropped = without.filter((line) => signed.has(rest(line, 0))).length;
  return kept > dropped;
}

/** The wrap of a line, the one that takes most characters first. */
export function wrapOf(wraps: readonly Wrap[], { observed: { text }, run }: Placed): Wrap {
  const fitting = wraps.filter(
    ({ before, after }) => text.slice(0, run.start).endsWith(before) && text.startsWith(after, run.end),
  );
  const size = ({ before, after }: Wrap) => before.trim().length + after.trim().length;
  return fitting.sort((a, b) => size(b) - size(a) || b.after.length - a.after.length)[0] ?? noWrap;
}
