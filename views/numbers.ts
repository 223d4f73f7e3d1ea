import type { Code } from "../calibration/message.ts";
import { roundedPair } from "../calibration/rounding.ts";
import { isTooCoarse } from "../calibration/too-coarse.ts";
import type { DecimalMark } from "../calibration/typed-number.ts";
import { textOf } from "./messages/catalogue.ts";
import { type Locale, locales } from "./messages/language.ts";

const marks = new Map(locales.map((locale) => [locale, markOf(locale)]));

/** The decimal mark that a language writes. */
export const decimalMark = (locale: Locale): DecimalMark => marks.get(locale) ?? ".";

function markOf(locale: Locale): DecimalMark {
  return new Intl.NumberFormat(locale).format(0.5).includes(",") ? "," : ".";
}

/** Decimal text ("-31.10") the way a language writes it: its decimal mark, a true minus sign, no grouping. */
export function inLocale(decimal: string, locale: Locale = "en"): string {
  return decimal.replace(".", decimalMark(locale)).replace(/^-/, "−");
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

/** The same in two, for a page that writes them in different ink; of an interval too wide to say anything its ends, and no ±. */
export function densityParts(
  gPerCm3: number,
  expandedGPerCm3: number,
  locale: Locale = "en",
): { value: string; u?: string } {
  if (isTooCoarse(gPerCm3, expandedGPerCm3)) return { value: densityText(gPerCm3, expandedGPerCm3, locale) };
  const { value, u } = roundedPair(gPerCm3, expandedGPerCm3);
  return { value: inLocale(value, locale), u: inLocale(u, locale) };
}

/** "10.364 ± 0.060"; of an interval too wide to say anything its ends alone, never a value beside a larger uncertainty. */
export function densityText(gPerCm3: number, expandedGPerCm3: number, locale: Locale = "en"): string {
  return isTooCoarse(gPerCm3, expandedGPerCm3)
    ? fromTo(Math.max(0, gPerCm3 - expandedGPerCm3), gPerCm3 + expandedGPerCm3, locale)
    : plusMinus(gPerCm3, expandedGPerCm3, locale);
}

/** "10.304 to 10.424": both ends with the decimals that the interval's own half-width deserves. */
export function fromTo(low: number, high: number, locale: Locale = "en"): string {
  const half = (high - low) / 2;
  const decimals = half > 0 ? Math.max(0, roundedPair(low, half).decimals) : 4;
  return said("number.from-to", locale, {
    low: fixed(low, decimals, locale),
    high: fixed(high, decimals, locale),
  });
}

/** A share of one as whole percent: "62 %", and "under 1 %" for what is small but there. */
export function share(part: number, locale: Locale = "en"): string {
  if (part > 0 && part < 0.01) return said("number.under-one-percent", locale);
  return `${Math.round(part * 100)} %`;
}

const said = (code: Code, locale: Locale, values: Readonly<Record<string, string>> = {}) =>
  textOf(code, locale)!.fill(values);
