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
const exponent = "([eE][+-]?\\d{1,2}(?![\\d.,]))?";
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
