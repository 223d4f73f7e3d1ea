import { roundedPair } from "../calibration/rounding.ts";
import type { Locale } from "./messages/language.ts";

const marks: Record<Locale, { decimal: "," | "."; other: "," | "." }> = {
  en: { decimal: ".", other: "," },
  de: { decimal: ",", other: "." },
  es: { decimal: ",", other: "." },
};

/** The decimal mark that a language writes. */
export const decimalMark = (locale: Locale): "," | "." => marks[locale].decimal;

/** Decimal text ("-31.10") the way a language writes it: its decimal mark, a true minus sign, no grouping. */
export function inLocale(decimal: string, locale: Locale = "en"): string {
  return decimal.replace(".", marks[locale].decimal).replace(/^-/, "−");
}

/** A number with so many decimals in the language's manner. */
export function fixed(value: number, decimals: number, locale: Locale = "en"): string {
  const text = value.toFixed(decimals);
  return inLocale(/^-[0.]*$/.test(text) ? text.slice(1) : text, locale);
}

/** "10.364 ± 0.030": value and uncertainty by GUM 7.2.6, without the unit. Throws RangeError when u is not above 0. */
export function plusMinus(value: number, uncertainty: number, locale: Locale = "en"): string {
  const { value: text, u } = roundedPair(value, uncertainty);
  return `${inLocale(text, locale)} ± ${inLocale(u, locale)}`;
}

/** "10.304 to 10.424": both ends with the decimals that the interval's own half-width deserves. */
export function fromTo(low: number, high: number, locale: Locale = "en"): string {
  const half = (high - low) / 2;
  const decimals = half > 0 ? Math.max(0, roundedPair(low, half).decimals) : 4;
  return `${fixed(low, decimals, locale)} ${locale === "de" ? "bis" : "to"} ${fixed(high, decimals, locale)}`;
}

/** A share of one as whole percent: "62 %", and "under 1 %" for what is small but there. */
export function share(part: number, locale: Locale = "en"): string {
  if (part > 0 && part < 0.01) return locale === "de" ? "unter 1 %" : "under 1 %";
  return `${Math.round(part * 100)} %`;
}

/** What a typed number was understood to be. */
export type TypedNumber =
  | { kind: "number"; text: string }
  | { kind: "question"; typed: string; readings: readonly [string, string]; says: string }
  | { kind: "refused"; typed: string; says: string };

/**
 * Reads a number as people type it: decimal comma or point, blanks or apostrophes between groups of three, a true
 * minus sign. The result is decimal text with a point; "2,97" gives "2.97", trailing zeros stay. What could mean
 * two numbers is not guessed: "1,234" comes back as a question with both readings. A single mark that is the
 * language's own decimal mark is never a question ("1,234" on a German page, "1.234" on an English one).
 */
export function readNumber(typed: string, locale: Locale = "en"): TypedNumber {
  const bare = typed.trim().replace(/[−–]/g, "-");
  const text = bare.replace(/(\d)['’\s\u00a0\u202f](?=\d{3}(?!\d))/g, "$1");
  if (text === "") return refused(typed, "Nothing was typed. Right: a number such as 31.10 or 31,10.");
  if (!/^[+-]?[\d.,]*\d[\d.,]*$/.test(text))
    return refused(
      typed,
      `"${typed.trim()}" is not a number. Right: digits with one comma or point, such as 31.10; the unit is chosen beside it.`,
    );
  const commas = text.split(",").length - 1;
  const points = text.split(".").length - 1;
  if (commas + points === 0) return { kind: "number", text: unsigned(text) };
  if (commas + points === 1) return oneMark(typed, text, locale);
  if (commas > 0 && points > 0) return bothMarks(typed, text);
  return grouped(typed, text, commas > 0 ? "," : ".");
}

function oneMark(typed: string, text: string, locale: Locale): TypedNumber {
  const asDecimal = unsigned(text.replace(",", "."));
  const other = marks[locale].other;
  // Only one to three digits, not starting with 0, then exactly three: the shape of a thousands group.
  const couldGroup = new RegExp(`^[+-]?[1-9]\\d{0,2}\\${other}\\d{3}$`).test(text);
  if (!couldGroup) return { kind: "number", text: asDecimal };
  return question(typed, [asDecimal, unsigned(text.replace(other, ""))]);
}

function bothMarks(typed: string, text: string): TypedNumber {
  const last = Math.max(text.lastIndexOf(","), text.lastIndexOf("."));
  const decimal = text[last] as "," | ".";
  const group = decimal === "," ? "." : ",";
  if (text.split(decimal).length > 2)
    return refused(
      typed,
      `"${typed.trim()}" has more than one decimal mark. Right: digits with one comma or point, such as 31.10.`,
    );
  const asGrouped = unsigned(text.replaceAll(group, "").replace(decimal, "."));
  const asSlip = unsigned(text.replace(decimal, "").replace(group, "."));
  return text.split(group).length > 2
    ? { kind: "number", text: asGrouped }
    : question(typed, [asGrouped, asSlip]);
}

function grouped(typed: string, text: string, mark: "," | "."): TypedNumber {
  const wellFormed = new RegExp(`^[+-]?\\d{1,3}(\\${mark}\\d{3})+$`).test(text);
  return wellFormed
    ? { kind: "number", text: unsigned(text.replaceAll(mark, "")) }
    : refused(
        typed,
        `"${typed.trim()}" has more than one decimal mark. Right: digits with one comma or point, such as 31.10.`,
      );
}

function question(typed: string, readings: readonly [string, string]): TypedNumber {
  return {
    kind: "question",
    typed,
    readings,
    says: `"${typed.trim()}" can mean ${readings[0]} or ${readings[1]}. Choose one, or type it without a thousands mark.`,
  };
}

function refused(typed: string, says: string): TypedNumber {
  return { kind: "refused", typed, says };
}

/** Drops a plus sign and writes a leading zero: ".5" becomes "0.5", "5." becomes "5". */
function unsigned(text: string): string {
  return text
    .replace(/^\+/, "")
    .replace(/^(-?)\./, "$10.")
    .replace(/\.$/, "");
}
