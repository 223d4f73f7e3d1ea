/** Digits standing in a line, with marks of decimals and thousands between them; not yet known to be a weight. */
export interface NumberRun {
  start: number;
  end: number;
  /** "31.10", "1,234.5", "31.10[3]" */
  digits: string;
  /** decimal value under the plainest reading, sign included; only for telling small from large */
  value: number;
}

const run = /\d(?:[\d.,']*\d)?(?:[.,]?\[\d\])?/g;

/** Every number in the text, in order. */
export function numbersIn(text: string): NumberRun[] {
  return [...text.matchAll(run)].map((match) => {
    const start = match.index;
    const digits = match[0];
    const sign = /([+\-\u2212]) *$/.exec(text.slice(0, start))?.[1];
    const size = plainValue(digits);
    return {
      start,
      end: start + digits.length,
      digits,
      value: sign === "-" || sign === "\u2212" ? -size : size,
    };
  });
}

/** The marks between the digits, in order: "1,234.5" has ",.". */
export const marksIn = (digits: string) => digits.replace(/[\d[\]]/g, "");

function plainValue(digits: string): number {
  const bare = digits.replace(/[[\]']/g, "");
  const marks = marksIn(bare);
  const last = marks.at(-1);
  if (last === undefined) return Number(bare);
  if (marks.length > 1 && marks[0] === last) return Number(bare.replaceAll(/[.,]/g, ""));
  const at = bare.lastIndexOf(last);
  return Number(`${bare.slice(0, at).replaceAll(/[.,]/g, "")}.${bare.slice(at + 1)}`);
}
