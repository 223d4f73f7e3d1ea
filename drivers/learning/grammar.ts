import type { Mark, NumberPart, Part } from "./profile.ts";
import { decimalOf } from "./written-number.ts";

export interface Matched {
  /** decimal text with a point; null for lines without a weight */
  text: string | null;
  marks: Mark[];
}

const literal = (text: string) => text.replace(/[.*+?^${}()|[\]\\/-]/g, "\\$&");

/** A function that reads exactly the lines made of these parts, and answers null to every other. */
export function grammar(parts: readonly Part[]): (text: string) => Matched | null {
  const pattern = new RegExp(`^${parts.map(source).join("")}$`, "d");
  const markParts = parts.flatMap((part, i) => (part.is === "mark" ? [{ part, i }] : []));
  const number = parts.find((part): part is NumberPart => part.is === "number");
  const padded = parts.find((part) => part.is === "pad-to");
  return (text) => {
    const found = pattern.exec(text);
    if (!found) return null;
    const { groups } = found;
    const pad = found.indices?.groups?.pad;
    if (padded?.is === "pad-to" && pad && pad[1] - text.lastIndexOf("\n", pad[0] - 1) - 1 !== padded.total)
      return null;
    const marks = markParts.flatMap(({ part, i }) => {
      const text = groups?.[`m${i}`];
      return part.is === "mark" ? (part.marks.find((mark) => mark.text === text) ?? []) : [];
    });
    if (!number) return { text: null, marks };
    const decimal = decimalOf(number, groups?.left ?? "", groups?.digits ?? "", groups?.right ?? "");
    return decimal === null ? null : { text: decimal, marks };
  };
}

/** A number that is not read, with its sign and padding. */
const otherNumber = " *[+\\-\\u2212]? *\\d[\\d.,']*(?:\\[\\d\\])? *";

function source(part: Part, index: number): string {
  switch (part.is) {
    case "text":
      return literal(part.text);
    case "mark": {
      const longestFirst = [...part.marks].sort((a, b) => b.text.length - a.text.length);
      return `(?<m${index}>${longestFirst.map((mark) => literal(mark.text)).join("|")})`;
    }
    case "digits":
      return `\\d{${part.least},${part.most}}`;
    case "pad-to":
      return "(?<pad> *)";
    case "other-number":
      return otherNumber;
    case "number": {
      const right = part.align === "left" ? "(?<right> *)" : "(?<right>)";
      return `(?<left> *[+\\-\\u2212]? *)(?<digits>\\d[\\d.,']*(?:\\[\\d\\])?)${right}`;
    }
  }
}
