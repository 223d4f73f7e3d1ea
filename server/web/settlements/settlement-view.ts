import { message } from "../../../calibration/message.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { languageNames, locales } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { inLocale } from "../../../views/numbers.ts";
import type { ClosedSettlement, SettlementView } from "../../../views/settlements/view.ts";
import type { Closing } from "../../lots/lot.ts";
import type { AssayedMelts } from "../../melts/assayed-melts.ts";
import type { Melt } from "../../melts/melt.ts";
import type { Library } from "../../metals/library.ts";
import { type SettlementManner, sheetView } from "../../reports/settlement-sheet.ts";
import type { LotPrice } from "../../settlements/price.ts";
import type { LotSettlement } from "../../settlements/settlement-repository.ts";
import { type Manner, whenOf } from "../when.ts";
import { meltsOf } from "./own-melts-view.ts";
import { termsSoFar } from "./terms-view.ts";

/** The page of a settlement, but for the form that was sent and the token. */
export function settlementView(
  found: LotSettlement,
  { melts, ...manner }: { library: Library; melts: AssayedMelts } & Manner,
): Omit<SettlementView, "sent" | "values" | "problems" | "csrfToken" | "currency"> {
  const { lot, entries, settlement, settled, items, questions } = found;
  const { locale } = manner;
  const when = (at: string) => whenOf(at, manner.zone);
  const prices = Object.values(settlement.prices).flat();
  return {
    lotId: lot.id,
    lotName: lot.name,
    isClosed: lot.closed !== undefined,
    trust: { order: settlement.trust, pays: settlement.pays, narrowed: settlement.narrowed },
    ...(settled
      ? { sheet: sheetView({ settled, lotFine: found.totals.fine_g }, prices, { locale, when }) }
      : {}),
    closed: [...lot.closings]
      .reverse()
      .map((closing) => closedView(closing, found, prices, { locale, when })),
    priceVersions: [...prices].reverse().map((price) => priceSaid(price, { locale, when })),
    said: termsSoFar(entries, items, { locale, when }),
    meltedIn: found.melts.map((melt) => ({
      href: `/melts/${melt.id}`,
      name: melt.name,
      message: message(`melts.for-lot.${standingFor(melt)}`),
    })),
    melts: meltsOf(settlement, items, melts, locale),
    questions,
    languages: [locale, ...locales.filter((one) => one !== locale)].map((id) => ({
      id,
      name: languageNames[id],
    })),
    about: { subject: lot.id, seen: entries.length },
  };
}

/** Whether a melt tells what a lot of it holds. */
function standingFor({ lots, settled }: Melt) {
  if (lots.length > 1) return "of-several" as const;
  return settled ? ("counts" as const) : ("open" as const);
}

function priceSaid(price: LotPrice, { locale, when }: SettlementManner): string {
  const t = tellerOf(locale);
  return t("settlement.price-said", {
    when: when(price.lockedAt),
    metal: t(`lots.metals.${price.metal}`),
    price: inLocale(price.price, locale),
    currency: price.currency,
    per: t(`payout.pers.${price.per}`),
    source: price.source,
    by:
      price.second === undefined
        ? (price.by ?? "–")
        : t("signed.with-second", { by: price.by ?? "–", second: price.second }),
    reason: price.reason ?? "–",
  });
}

function closedView(
  closing: Closing,
  { entries, lot }: LotSettlement,
  prices: readonly LotPrice[],
  manner: SettlementManner,
): ClosedSettlement {
  const t = tellerOf(manner.locale);
  const reopened = entries.find(
    (entry) => entry.kind === "lot-reopened" && entry.body.closing === closing.entry,
  );
  return {
    version: closing.version ?? 1,
    when: manner.when(closing.at),
    by: closing.by ?? "–",
    reopened:
      reopened?.kind === "lot-reopened"
        ? t("settlement.closed.reopened", {
            when: manner.when(reopened.at),
            by: reopened.body.by,
            second: reopened.body.second,
            reason: reopened.body.reason,
          })
        : "",
    ...(closing.settlement
      ? { sheet: sheetView({ settled: closing.settlement, lotFine: closing.fine_g }, prices, manner) }
      : {}),
    prints: entries.flatMap((entry) =>
      entry.kind === "settlement-printed" && entry.body.closing === closing.entry
        ? [
            {
              language: languageNames[entry.body.language as Locale] ?? entry.body.language,
              href: `/lots/${lot.id}/prints/${entry.id}`,
              sha256: entry.body.pdf,
            },
          ]
        : [],
    ),
  };
}
