import { type Message, message } from "./message.ts";

/** What the language of a page writes before the decimals. */
export type DecimalMark = "." | ",";

/**
 * What a typed number was understood to be: decimal text with a point ("31.10"); a question with each thing it can
 * mean, written so that it is understood when it is typed; or a refusal.
 */
export type TypedNumber =
  | { kind: "number"; text: string }
  | { kind: "question"; meanings: readonly string[]; message: Message }
  | { kind: "refused"; message: Message };

export interface Reading {
  /** the decimal mark of the page's language */
  mark?: DecimalMark;
  /** read off a display, where a single point is the decimal mark in every language */
  displayed?: boolean;
}

/**
 * Reads a number as people type it: decimal comma or point, blanks or apostrophes between groups of three, a true
 * minus sign. "2,97" gives "2.97", trailing zeros stay. What could mean two numbers is not guessed: "1,234" comes back
 * as a question; "1.234,5" and "1,234.5" can only mean 1234.5. A single mark that is the page's own decimal mark is never
 * a question ("1,234" where the comma is it).
 */
export function readNumber(typed: string, { mark = ".", displayed = false }: Reading = {}): TypedNumber {
  const text = typed
    .trim()
    .replace(/[−–]/g, "-")
    .replace(/(\d)['’\s\u00a0\u202f](?=\d{3}(?!\d))/g, "$1");
  if (text === "") return { kind: "refused", message: message("form.number.empty") };
  if (!/^[+-]?[\d.,]*\d[\d.,]*$/.test(text))
    return { kind: "refused", message: message("form.number.not-a-number", { typed: typed.trim() }) };
  const commas = text.split(",").length - 1;
  const points = text.split(".").length - 1;
  if (commas + points === 0) return { kind: "number", text: plain(text) };
  if (commas + points > 1) return commas > 0 && points > 0 ? bothMarks(text) : grouped(text);
  const asDecimal = plain(text.replace(",", "."));
  const other = mark === "," ? "." : ",";
  // one to three digits that do not begin with 0, then exactly three: the form of a group of thousands
  const couldGroup = new RegExp(`^[+-]?[1-9]\\d{0,2}\\${other}\\d{3}$`).test(text);
  if (!couldGroup || (displayed && points === 1)) return { kind: "number", text: asDecimal };
  return question(text, [asDecimal, plain(text.replace(other, ""))], mark);
}

/** Decimal text the way somebody types it with this mark. */
function withMark(decimal: string, mark: DecimalMark): string {
  return decimal.replace(".", mark);
}

/** A comma and a point: the last one stands before the decimals, the other parts groups of three, in every language. */
function bothMarks(text: string): TypedNumber {
  const last = text[Math.max(text.lastIndexOf(","), text.lastIndexOf("."))]!;
  const group = last === "," ? "." : ",";
  return new RegExp(`^[+-]?\\d{1,3}(\\${group}\\d{3})+\\${last}\\d*$`).test(text)
    ? { kind: "number", text: plain(text.replaceAll(group, "").replace(last, ".")) }
    : twoMarks(text);
}

/** One mark several times: groups of thousands, or nothing that can be read. */
function grouped(text: string): TypedNumber {
  return /^[+-]?\d{1,3}(?:(?:,\d{3})+|(?:\.\d{3})+)$/.test(text)
    ? { kind: "number", text: plain(text.replace(/[.,]/g, "")) }
    : twoMarks(text);
}

const twoMarks = (typed: string): TypedNumber => ({
  kind: "refused",
  message: message("form.number.two-marks", { typed }),
});

function question(typed: string, decimals: readonly string[], mark: DecimalMark): TypedNumber {
  const meanings = decimals.map((decimal) => withMark(decimal, mark));
  return {
    kind: "question",
    meanings,
    message: message("form.number.two-meanings", {
      typed,
      meanings: { anyOf: decimals.map((decimal) => ({ decimal })) },
    }),
  };
}

/** Drops a plus sign and writes a leading zero: ".5" becomes "0.5", "5." becomes "5". */
function plain(text: string): string {
  return text
    .replace(/^\+/, "")
    .replace(/^(-?)\./, "$10.")
    .replace(/\.$/, "");
}
