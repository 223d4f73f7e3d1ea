import { gramsPerUnit } from "../../../calibration/units.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { fixed } from "../../../views/numbers.ts";
import type { SecondUnit } from "../../station/bench-settings.ts";

/** How a page tells masses: in the language's manner, in grams and in the house's second unit beside them. */
export interface MassManner {
  locale: Locale;
  second: SecondUnit;
}

/** The mass in g, then in the second unit with so many decimals that its step is no coarser: "12.90 g = 8.295 dwt". */
export function massText(grams: number, decimals: number, { locale, second }: MassManner): string {
  const inGrams = `${fixed(grams, decimals, locale)} g`;
  if (second === "none") return inGrams;
  const per = Number(gramsPerUnit[second]);
  return `${inGrams} = ${fixed(grams / per, decimalsIn(per, decimals), locale)} ${second}`;
}

/**
 * Both ends in g with what they are of, then both in the second unit: "45.75 to 66.71 g gold = 29.418 to 42.896 dwt". A
 * line does not break between the ends.
 */
export function massRangeText(
  [low, high]: readonly [number, number],
  decimals: number,
  { locale, second }: MassManner,
  of = "",
): string {
  const t = tellerOf(locale);
  const between = (per: number, shown: number, unit: string) =>
    `${unbroken(t("lots.totals.range", { low: fixed(low / per, shown, locale), high: fixed(high / per, shown, locale), unit: "" }).trim())} ${unit}`;
  const inGrams = `${between(1, decimals, "g")} ${of}`.trim();
  if (second === "none") return inGrams;
  const per = Number(gramsPerUnit[second]);
  return `${inGrams} =\u00a0${between(per, decimalsIn(per, decimals), second)}`;
}

const unbroken = (text: string) => text.replaceAll(" ", "\u00a0");

const decimalsIn = (gramsPer: number, decimals: number) => decimals + Math.ceil(Math.log10(gramsPer));
