import { lastPlace } from "../../../calibration/decimal.ts";
import { readNumber } from "../../../calibration/typed-number.ts";
import { isMassUnit, toGrams } from "../../../calibration/units.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { decimalMark } from "../../../views/numbers.ts";

/** Masses from one to the other, g, both included. */
export interface MassRange {
  fromG: number;
  toG: number;
}

const number = "(\\d[\\d.,]*)";
const shape = new RegExp(
  `^${number}(?:\\s*(±|\\+/?-|[-–—…]|\\.{2,3}|to|bis)\\s*${number})?\\s*([a-z]+)?$`,
  "i",
);

/** Decimal fractions of a gram that only binary numbers have. */
const rounding = 1e-9;

/**
 * The range of dry masses that was typed: "31.1" is all a display that shows 31.1 can mean, half a step to either
 * side; "31.1 ± 0.2" and "30 to 32" are what they say. g, unless a unit stands behind. Undefined for other text.
 */
export function massAsked(typed: string, locale: Locale): MassRange | undefined {
  const [, first, sign, second, named = "g"] = shape.exec(typed.trim()) ?? [];
  const unit = named.toLowerCase();
  const a = textOf(first, locale);
  if (a === undefined || !isMassUnit(unit)) return undefined;
  const grams = (text: string) => Number(toGrams(text, unit));
  if (sign === undefined) return around(grams(a), (lastPlace(a) / 2) * grams("1"));
  const b = textOf(second, locale);
  if (b === undefined) return undefined;
  if (sign === "±" || sign.startsWith("+")) return around(grams(a), grams(b));
  const ends = [grams(a), grams(b)];
  return { fromG: Math.min(...ends) - rounding, toG: Math.max(...ends) + rounding };
}

function around(middleG: number, halfG: number): MassRange {
  return { fromG: middleG - halfG - rounding, toG: middleG + halfG + rounding };
}

function textOf(typed: string | undefined, locale: Locale): string | undefined {
  const read = typed === undefined ? undefined : readNumber(typed, { mark: decimalMark(locale) });
  return read?.kind === "number" ? read.text : undefined;
}
