import { exactly } from "../../../calibration/fraction.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { fixed, inLocale } from "../../../views/numbers.ts";
import { goldOfMelt } from "../../lots/lot-fine.ts";
import type { LotItem } from "../../lots/lot-item.ts";
import type { AssayedMelts } from "../../melts/assayed-melts.ts";
import { money, payFor } from "../../settlements/price.ts";
import type { Settlement } from "../../settlements/settlement.ts";
import { meltsSay } from "../laboratory/assayed-melts-view.ts";

/** The gold of the lot if it is melted like this house's melts so far, beside the free interval; empty while nothing is known. */
export function meltsOf(
  { prices }: Settlement,
  items: readonly LotItem[],
  melts: AssayedMelts,
  locale: Locale,
): readonly string[] {
  const weighed = items.flatMap((item) =>
    item.counts && item.weighed?.metal === "gold" ? [item.weighed] : [],
  );
  const foretold = weighed[0] && meltsSay(melts, weighed[0].measured.confidence, locale);
  if (!foretold) return [];
  const gold = foretold.rest && goldOfMelt(weighed, foretold.rest);
  if (!gold) return [foretold.message];
  const t = tellerOf(locale);
  const fine = t("lots.totals.range", {
    low: fixed(gold.lowG, 2, locale),
    high: fixed(gold.highG, 2, locale),
    unit: "g",
  });
  const price = prices.gold?.at(-1);
  const pay = (grams: number) =>
    price
      ? inLocale(money(payFor(exactly(grams.toFixed(6)), price), price.currency, price.rounding), locale)
      : "";
  return [
    foretold.message,
    price
      ? t("assay.own-melts.lot-paid", {
          fine,
          low: pay(gold.lowG),
          high: pay(gold.highG),
          currency: price.currency,
        })
      : t("assay.own-melts.lot", { fine }),
    t("assay.own-melts.only"),
  ];
}
