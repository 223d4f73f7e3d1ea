import { exactly, ratio, roundedText } from "../../calibration/fraction.ts";
import { gramsPerUnit } from "../../calibration/units.ts";
import type { Locale } from "../../views/messages/language.ts";
import { type Tell, tellerOf } from "../../views/messages/tell.ts";
import { inLocale } from "../../views/numbers.ts";
import type { LeftOutRow, SettlementRow, SettlementSheet } from "../../views/settlements/view.ts";
import type { TotalsAtClosing } from "../lots/totals-at-closing.ts";
import { type AgainstLot, againstLot } from "../settlements/against-lot.ts";
import type { LotPrice } from "../settlements/price.ts";
import type { LeftOut, Settled, SettledLine } from "../settlements/settlement.ts";

/** Decimals of a mass in g and in another unit, and of a fineness where a density says them. */
const massDecimals = 4;
const permilleDecimals = 0;
/** What somebody stated stands as it was stated; a melt's yield per gram that went in has no end. */
const statedDecimals = 2;

/** How a settlement is told. */
export interface SettlementManner {
  locale: Locale;
  /** a moment on the clock of the place */
  when(at: string): string;
}

/** What is settled, in words; `prices` are those that it names. */
export function sheetView(
  { settled, lotFine }: { settled: Settled; lotFine: TotalsAtClosing["fine_g"] },
  prices: readonly LotPrice[],
  manner: SettlementManner,
): SettlementSheet {
  const t = tellerOf(manner.locale);
  const decimal = (text: string) => inLocale(text, manner.locale);
  const priceOf = (entry: string) => prices.find((price) => price.entry === entry);
  const used = settled.metals.flatMap(({ price }) => priceOf(price) ?? []);
  const total = (end: "low" | "high" | "paid") =>
    settled.totals.map((one) => `${decimal(one[end])} ${one.currency}`).join(" + ");
  return {
    sums: settled.metals.flatMap(({ metal, fine_g, price: entry }) => {
      const price = priceOf(entry);
      return [
        [t("payout.sum.fine", { metal: t(`lots.metals.${metal}`) }), fineSum(fine_g, manner)] as const,
        ...(price ? [[t("payout.sum.price"), pricePaid(price, manner)] as const] : []),
      ];
    }),
    facts: used.flatMap((price) => priceFacts(price, manner)),
    rows: settled.lines.map((line) => {
      const price = used.find(({ metal }) => metal === line.metal);
      return rowOf(line, { currency: price?.currency ?? "", per: price?.per ?? "g" }, manner);
    }),
    fees: settled.metals
      .filter(({ fee }) => Number(fee) !== 0)
      .map(({ metal, fee, currency }) => ({
        what: t("payout.fee-of", { metal: t(`lots.metals.${metal}`) }),
        amount: `−${decimal(fee)} ${currency}`,
      })),
    totalLow: total("low"),
    totalHigh: total("high"),
    paid: total("paid"),
    paysBy: settled.totals.some(({ low, high }) => low !== high)
      ? t(`settlement.pays.${settled.pays}-said`)
      : "",
    against: againstLot(settled, lotFine).map((one) => againstSaid(one, manner)),
    leftOut: settled.left_out.map((one) => leftOutRow(one, manner)),
  };
}

const sumDecimals = 2;

function fineSum({ low, high }: { low: string; high: string }, { locale }: SettlementManner): string {
  const shown = (grams: string) => inLocale(roundedText(exactly(grams), sumDecimals, "half-even"), locale);
  return low === high
    ? `${shown(low)} g`
    : tellerOf(locale)("lots.totals.range", { low: shown(low), high: shown(high), unit: "g" });
}

function pricePaid({ price, currency, per, ratePercent }: LotPrice, { locale }: SettlementManner): string {
  const t = tellerOf(locale);
  return t("payout.sum.price-is", {
    rate: inLocale(ratePercent, locale),
    price: inLocale(price, locale),
    currency,
    per: t(`payout.pers.${per}`),
  });
}

function againstSaid({ metal, lot, here, because }: AgainstLot, { locale }: SettlementManner): string {
  const t = tellerOf(locale);
  const range = ({ low, high }: AgainstLot["lot"]) =>
    t("lots.totals.range", { low: inLocale(low, locale), high: inLocale(high, locale), unit: "g" });
  return t("payout.against-lot", {
    metal: t(`lots.metals.${metal}`),
    lot: range(lot),
    here: range(here),
    because: because.map(({ why, tickets }) => t(`payout.against-lot.${why}`, { tickets })).join("; "),
  });
}

function priceFacts(price: LotPrice, { locale, when }: SettlementManner): (readonly [string, string])[] {
  const t = tellerOf(locale);
  const metal = t(`lots.metals.${price.metal}`);
  const decimal = (text: string) => inLocale(text, locale);
  return [
    [
      t("payout.facts.price", { metal }),
      t("payout.facts.price-is", {
        price: decimal(price.price),
        currency: price.currency,
        per: t(`payout.pers.${price.per}`),
      }),
    ],
    [
      t("payout.facts.source", { metal }),
      t("payout.facts.source-is", {
        source: price.source,
        at: price.at,
        locked: when(price.lockedAt),
      }),
    ],
    [
      t("payout.facts.terms", { metal }),
      t("payout.facts.terms-are", {
        rate: decimal(price.ratePercent),
        fee: decimal(price.fee),
        currency: price.currency,
        rounding: t(`payout.roundings.${price.rounding}`),
      }),
    ],
    ...(price.covers_g === undefined
      ? []
      : [[t("payout.facts.covers", { metal }), `${decimal(price.covers_g)} g`] as const]),
  ];
}

function rowOf(
  line: SettledLine,
  { currency, per }: Pick<LotPrice, "currency" | "per">,
  { locale }: SettlementManner,
): SettlementRow {
  const t = tellerOf(locale);
  const decimal = (text: string) => inLocale(text, locale);
  const metal = t(`lots.metals.${line.metal}`);
  const isDensity = line.rests_on.source === "density";
  const range = (
    { low, high }: { low: string; high: string },
    shown: (text: string) => string,
    unit: string,
  ) =>
    isDensity
      ? t("lots.totals.range", { low: shown(low), high: shown(high), unit })
      : `${shown(low)} ${unit}`;
  const cut = (text: string, decimals: number) =>
    decimal(roundedText(exactly(text), Math.min(decimals, decimalsOf(text)), "half-even"));
  const inUnit = (grams: string) =>
    decimal(roundedText(ratio(exactly(grams), exactly(gramsPerUnit[per])), massDecimals + 1, "half-even"));
  const net = `${cut(line.net_g, massDecimals)} g`;
  const fine = range(line.fine_g, (text) => cut(text, massDecimals), "g");
  return {
    what: isDensity
      ? t("payout.pieces", { metal, count: line.pieces.length, tickets: ticketsOf(line) })
      : t("payout.one-piece", { metal, ticket: ticketsOf(line) }),
    net:
      Number(line.deducted_g) > 0
        ? t("payout.deducted", { net, deducted: `${decimal(line.deducted_g)} g` })
        : net,
    fineness: isDensity
      ? range(line.permille, (text) => cut(text, permilleDecimals), "‰")
      : `${cut(line.permille.low, statedDecimals)} ‰`,
    restsOn: restsOnOf(line, t, locale),
    fine: per === "g" ? fine : `${fine} = ${range(line.fine_g, inUnit, per)}`,
    payLow: `${decimal(line.pay.low)} ${currency}`,
    payHigh: `${decimal(line.pay.high)} ${currency}`,
  };
}

const decimalsOf = (text: string) => text.split(".")[1]?.length ?? 0;

const ticketsOf = ({ pieces }: Pick<SettledLine, "pieces">) => pieces.map(({ ticket }) => ticket).join(", ");

function restsOnOf({ rests_on, deducted_g }: SettledLine, t: Tell, locale: Locale): string {
  const {
    source,
    by,
    reason,
    laboratory,
    report = "",
    beside,
    like_assayed: like,
    not_narrowed: free,
  } = rests_on;
  const message = [
    laboratory === undefined
      ? source === "melt"
        ? t("payout.rests.melt", { melt: report })
        : t(`payout.sayers.${source}`)
      : t("payout.rests.laboratory", { laboratory, report }),
    ...(like === undefined ? [] : [t("payout.rests.like-assayed", { tickets: like })]),
    ...(free === undefined ? [] : [t("payout.rests.not-narrowed", { tickets: free })]),
    ...(by === undefined ? [] : [t("payout.rests.by", { by })]),
    ...(reason === undefined ? [] : [reason]),
    ...(source === "laboratory" || source === "melt" || Number(deducted_g) === 0
      ? []
      : [t("payout.rests.with-stones")]),
  ].join("; ");
  if (!beside) return message;
  const ends = { low: whole(beside.low, locale), high: whole(beside.high, locale) };
  return `${message}; ${t(beside.fits ? "payout.rests.fits" : "payout.rests.fits-not", ends)}`;
}

const whole = (permille: string, locale: Locale) =>
  inLocale(roundedText(exactly(permille), permilleDecimals, "half-even"), locale);

function leftOutRow(
  { id, ticket, metal, why, dry_g, by, reason }: LeftOut,
  { locale }: SettlementManner,
): LeftOutRow {
  const t = tellerOf(locale);
  const message = t(`payout.left-out.reasons.${why}`, {
    metal: metal === undefined ? "" : t(`lots.metals.${metal}`),
    by: by ?? "",
    reason: reason ?? "",
  });
  return {
    id,
    ticket,
    mass: `${inLocale(roundedText(exactly(dry_g), Math.min(massDecimals, decimalsOf(dry_g)), "half-even"), locale)} g`,
    why: message,
  };
}
