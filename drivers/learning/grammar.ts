import type { Mark, NumberPart, Part } from "./profile.ts";
import { decimalOf, type WrittenNumber } from "./written-number.ts";

export interface Matched {
  /** decimal text with a point; null for lines without a weight */
  text: string | null;
  marks: Mark[];
}

/** More ways to read one line than this: it is not understood. */
const mostWays = 64;

/**
 * A function that reads exactly the lines made of these parts, and answers null to every other. A line that can be read
 * in two ways that differ is not read.
 */
export function grammar(parts: readonly Part[]): (text: string) => Matched | null {
  return (text) => {
    const found = new Map<string, Matched>();
    let ways = 0;
    const walk = (index: number, at: number, so: Matched): void => {
      if (ways > mostWays) return;
      const part = parts[index];
      if (part === undefined) {
        if (at !== text.length) return;
        ways += 1;
        const known = withMarks(so);
        if (known) found.set(JSON.stringify(known), known);
        return;
      }
      for (const { to, mark, decimal } of stepsOf(part, text, at))
        walk(index + 1, to, {
          text: decimal ?? so.text,
          marks: mark ? [...so.marks, mark] : so.marks,
        });
    };
    walk(0, 0, { text: null, marks: [] });
    const [only, ...others] = found.values();
    if (only === undefined || ways > mostWays) return null;
    return others.length === 0 || others.every((other) => alike(other, only)) ? only : null;
  };
}

/** What the marks say about the number: its sign, and whether it is one they were seen beside. Null when it is not. */
function withMarks({ text, marks }: Matched): Matched | null {
  if (text === null) return { text, marks };
  const size = Math.abs(Number(text));
  if (marks.some(({ upTo }) => upTo !== undefined && size > upTo)) return null;
  const minus = marks.some(({ sign }) => sign === "minus") && size > 0;
  return { text: minus ? `-${text.replace("-", "")}` : text, marks };
}

/** Two ways that mean the same: the number, its sign and what is said about rest. */
function alike(a: Matched, b: Matched): boolean {
  const meaning = ({ text, marks }: Matched) =>
    JSON.stringify([
      text,
      marks.filter(({ means }) => means !== "nothing").map(({ means }) => means),
      marks.map(({ sign }) => sign),
    ]);
  return meaning(a) === meaning(b);
}

interface Step {
  to: number;
  mark?: Mark;
  decimal?: string;
}

/** A number that is not read, with its sign and padding. */
const otherNumber = /^ *[+\-\u2212]? *\d[\d.,']*(?:\[\d\])? *$/;
const otherNumberAtMost = / *[+\-\u2212]? *\d[\d.,']*(?:\[\d\])? */y;

function stepsOf(part: Part, text: string, at: number): Step[] {
  switch (part.is) {
    case "text":
      return text.startsWith(part.text, at) ? [{ to: at + part.text.length }] : [];
    case "mark":
      return part.marks.flatMap((mark) =>
        text.startsWith(mark.text, at) ? [{ to: at + mark.text.length, mark }] : [],
      );
    case "digits": {
      let most = 0;
      while (most < part.most && isDigit(text[at + most])) most += 1;
      return lengths(part.least, most).map((length) => ({ to: at + length }));
    }
    case "pad-to": {
      let to = at;
      while (text[to] === " ") to += 1;
      return to - text.lastIndexOf("\n", at - 1) - 1 === part.total ? [{ to }] : [];
    }
    case "other-number": {
      otherNumberAtMost.lastIndex = at;
      const most = otherNumberAtMost.exec(text)?.[0].length ?? 0;
      return lengths(1, most)
        .filter((length) => otherNumber.test(text.slice(at, at + length)))
        .map((length) => ({ to: at + length }));
    }
    case "number":
      return numberSteps(part, text, at);
  }
}

const isDigit = (character: string | undefined) => character !== undefined && /\d/.test(character);

/** Whole numbers from most down to least. */
const lengths = (least: number, most: number) =>
  Array.from({ length: Math.max(0, most - least + 1) }, (_, i) => most - i);

const noWrap = [{ before: "", after: "", minus: false }];

function numberSteps(part: NumberPart, text: string, at: number): Step[] {
  const steps: Step[] = [];
  const { fill = " ", wraps = noWrap } = part;
  const filling = fill === " " ? " " : ` \\u{${fill.codePointAt(0)!.toString(16)}}`;
  const lead = new RegExp(`[${filling}]*[+\\-\\u2212]?[${filling}]*`, "uy");
  lead.lastIndex = at;
  const left = lead.exec(text)?.[0] ?? "";
  const body = part.pounds
    ? /\d+(?: *lb *|:| +)\d+(?:\.\d+)?/y
    : /[.,]?\d[\d.,'\u2019 ]*(?:[.,]?(?:\[\d\]|\(\d\)))?/y;
  // Blanks before the digits may belong to the padding or to the wrap.
  for (const wrap of wraps)
    for (const from of wrap.before === " " ? [at + left.length - 1] : [at + left.length]) {
      if (from < at || !text.startsWith(wrap.before, from)) continue;
      const start = from + wrap.before.length;
      body.lastIndex = start;
      const most = body.exec(text)?.[0].length ?? 0;
      for (const length of lengths(1, most)) {
        const digits = text.slice(start, start + length);
        if (!/[\d\])]$/.test(digits)) continue;
        const exponent = part.exponent
          ? (/^[eE][+-]?\d{1,2}/.exec(text.slice(start + length))?.[0] ?? "")
          : "";
        const behind = start + length + exponent.length;
        if (!text.startsWith(wrap.after, behind)) continue;
        const end = behind + wrap.after.length;
        const blanks = part.align === "left" ? / */y : /(?:)/y;
        blanks.lastIndex = end;
        const pad = blanks.exec(text)?.[0].length ?? 0;
        for (const right of lengths(0, pad)) {
          const written: WrittenNumber = {
            left: text.slice(at, from),
            digits,
            exponent,
            right: " ".repeat(right),
            wrap,
          };
          const decimal = decimalOf(part, written);
          if (decimal !== null) steps.push({ to: end + right, decimal });
        }
      }
    }
  return steps;
}
