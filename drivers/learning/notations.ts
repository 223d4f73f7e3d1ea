import { gramsPerUnit, type MassUnit } from "../../calibration/units.ts";
import { unitMeaning } from "../unit-words.ts";
import type { Typed } from "./typed.ts";
import { magnitudeOf, type Notation } from "./written-number.ts";

/** Digits standing in a line, with the marks between them; not yet known to be a weight. */
export interface Run {
  start: number;
  end: number;
  /** "31.10", "1,234.5", "31.10[3]", without exponent */
  digits: string;
  /** "E-03", or "" */
  exponent: string;
}

const bracketed = "(?:[.,]?(?:\\[\\d\\]|\\(\\d\\)))?";
const exponent = "([eE][+-]?\\d{1,2}(?!\\d|[.,]\\d))?";
const leadingMark = "(?<![\\d.,])[.,]\\d+|";

/** Ways in which the characters of one number may be told from what stands around them. */
export const runForms = {
  "any marks": new RegExp(`(${leadingMark}\\d(?:[\\d.,'\u2019]*\\d)?${bracketed})${exponent}`, "g"),
  "comma parts": new RegExp(`(${leadingMark}\\d+(?:\\.\\d+)?${bracketed})${exponent}`, "g"),
  "point parts": new RegExp(`(\\d+(?:,\\d+)?${bracketed})${exponent}`, "g"),
  "blanks group": new RegExp(
    `((?<![\\d.,])\\d{1,3}(?: \\d{3})+(?:[.,]\\d+)?(?!\\d)|\\d(?:[\\d.,]*\\d)?)${exponent}`,
    "g",
  ),
  "pounds and ounces": /(\d+(?: *lb *|:| +)\d{1,2}(?:\.\d+)?)()/g,
} as const;

export type RunForm = keyof typeof runForms;

/** Every number in the text, in order, told apart in this way. */
export function runsIn(text: string, form: RunForm = "any marks"): Run[] {
  return [...text.matchAll(runForms[form])].map((match) => ({
    start: match.index,
    end: match.index + match[0].length,
    digits: match[1] ?? "",
    exponent: match[2] ?? "",
  }));
}

/**
 * Every notation in which this run of digits says the size that was typed. A power of ten between the two is only kept as
 * `shift`; whether something in the line explains it is asked by `shiftExplained`.
 */
export function notationsOf(run: Run, typed: Typed): Notation[] {
  if (typed.pounds) {
    const pounds: Notation = { decimalMark: ".", grouping: "none", impliedPlaces: null, pounds: true };
    return magnitudeOf(pounds, run.digits, "") === size(typed) ? [pounds] : [];
  }
  const marks = [...new Set(run.digits.replace(/[\d[\]()]/g, ""))];
  const decimals = marks.filter((mark) => mark === "." || mark === ",") as "."[] | ","[];
  const found: Notation[] = [];
  for (const decimalMark of [...decimals, "none"] as const) {
    const [grouping = "none", ...more] = marks.filter(
      (mark) => mark !== decimalMark,
    ) as Notation["grouping"][];
    if (more.length > 0) continue;
    const plain: Notation = {
      decimalMark,
      grouping,
      impliedPlaces: null,
      ...(run.exponent !== "" && { exponent: true }),
    };
    const notation = scaledTo(plain, run, typed);
    if (notation) found.push(notation);
  }
  return found;
}

const size = ({ text }: Typed) => text.replace("-", "");

/** The notation with the power of ten that makes it say what was typed, or null when none does. */
function scaledTo(plain: Notation, { digits, exponent }: Run, typed: Typed): Notation | null {
  const read = magnitudeOf(plain, digits, exponent);
  if (read === null) return null;
  const bare = (text: string) => text.replace(".", "").replace(/^0+/, "");
  const same = (a: string, b: string) =>
    plain.exponent ? a.replace(/0+$/, "") === b.replace(/0+$/, "") : a === b;
  if (!same(bare(read), typed.digits)) return null;
  const power = powerOf(size(typed)) - powerOf(read);
  const unmarked = plain.decimalMark === "none" && plain.grouping === "none" && !plain.exponent;
  if (unmarked) return { ...plain, impliedPlaces: typed.places };
  const notation = {
    ...plain,
    ...(power !== 0 && { shift: power }),
    ...(plain.exponent && { outPlaces: typed.places }),
  };
  return magnitudeOf(notation, digits, exponent) === size(typed) ? notation : null;
}

/** Power of ten of the first digit that is not zero. */
const powerOf = (text: string) => Number(Number(text).toExponential(15).split("e")[1]);

/** Units written in small letters right behind a number are taken at their word; a capital may be a flag. */
const plainUnit = /^[a-z%]/;

/** What the word right behind a number says about its unit: nothing, another unit, no weight, or a power of ten. */
export function shiftExplained(shift: number, right: string, unit: MassUnit): "yes" | "other-unit" | "no" {
  let rest = right;
  let power = 0;
  const [times, , exponent] = /^ *[x\u00d7*\u00b7] ?10(\^?([+-]?\d+))?/i.exec(right) ?? [];
  if (times !== undefined) {
    power += exponent === undefined ? 1 : Number(exponent);
    rest = right.slice(times.length);
  }
  const word = /^ *([A-Za-z%\u00b5]+)/.exec(rest)?.[1] ?? "";
  const meaning = plainUnit.test(word) || /^(KG|MG)$/.test(word) ? unitMeaning(word) : null;
  if (meaning && "notWeight" in meaning) return "other-unit";
  const ratio = meaning ? Math.log10(Number(gramsPerUnit[meaning.unit]) / Number(gramsPerUnit[unit])) : 0;
  if (Math.abs(ratio - Math.round(ratio)) > 1e-9) return "other-unit";
  if (power + Math.round(ratio) === shift) return "yes";
  // a unit that is named and is another one, and nothing that makes up for it
  return ratio !== 0 ? "other-unit" : "no";
}
