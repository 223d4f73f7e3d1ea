import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { inLocale } from "../../../views/numbers.ts";
import type { PreviewView } from "../../../views/settlements/view.ts";
import type { Settled } from "../../settlements/settlement.ts";
import type { LotSettlement } from "../../settlements/settlement-repository.ts";

/** Every sum that a change would alter, before and after. */
export function previewOf(
  before: Pick<LotSettlement, "settled">,
  after: Pick<LotSettlement, "settled"> | undefined,
  locale: Locale,
): PreviewView {
  const [old, next] = [sumsOf(before.settled, locale), sumsOf(after?.settled, locale)];
  const names = [...new Set([...old.keys(), ...next.keys()])];
  return {
    rows: names
      .filter((what) => old.get(what) !== next.get(what))
      .map((what) => ({ what, before: old.get(what) ?? "–", after: next.get(what) ?? "–" })),
  };
}

/** Pay of each ticket and metal, and the sum of each currency, by its name on the page. */
function sumsOf(settled: Settled | undefined, locale: Locale): Map<string, string> {
  const t = tellerOf(locale);
  const sums = new Map<string, string>();
  if (!settled) return sums;
  const currencyOf = new Map(settled.metals.map(({ metal, currency }) => [metal, currency]));
  const range = (low: string, high: string, currency = "") =>
    low === high
      ? `${inLocale(low, locale)} ${currency}`
      : t("lots.totals.range", { low: inLocale(low, locale), high: inLocale(high, locale), unit: currency });
  for (const { metal, pieces, pay } of settled.lines) {
    const what = t("settlement.preview.line", {
      metal: t(`lots.metals.${metal}`),
      tickets: pieces.map(({ ticket }) => ticket).join(", "),
    });
    sums.set(what, range(pay.low, pay.high, currencyOf.get(metal)));
  }
  for (const { currency, low, high, paid } of settled.totals) {
    sums.set(t("settlement.preview.total", { currency }), range(low, high, currency));
    sums.set(t("settlement.preview.paid", { currency }), `${inLocale(paid, locale)} ${currency}`);
  }
  return sums;
}
