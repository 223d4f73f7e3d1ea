import { gramsPerUnit } from "../../../calibration/units.ts";
import type { PayoutRow, PayoutView } from "../../../views/lots/payout.tsx";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { fixed, inLocale } from "../../../views/numbers.ts";
import type { AssayedMelts } from "../../laboratory/assayed-melts.ts";
import type { Lot, LotPrice } from "../../lots/lot.ts";
import { goldOfMelt } from "../../lots/lot-fine.ts";
import type { LotItem } from "../../lots/lot-item.ts";
import { type PayoutLine, payFor, payoutLines, rounded } from "../../lots/payout.ts";
import type { Library } from "../../metals/library.ts";
import { meltsSay } from "../laboratory/assayed-melts-view.ts";
import { nameIn } from "../records/record-view.ts";
import { whenOf } from "../when.ts";

/** The worksheet as its page shows it; undefined while no price is locked. */
export function sheetOf(
  lot: Lot,
  items: readonly LotItem[],
  { library, melts, locale }: { library: Library; melts: AssayedMelts; locale: Locale },
): PayoutView["sheet"] | undefined {
  const prices = Object.values(lot.prices);
  if (prices.length === 0) return undefined;
  const { lines, left } = payoutLines(items, lot.prices, lot.terms);
  const total = (end: "payLow" | "payHigh") => {
    const paid = new Map<string, number>();
    for (const price of prices) {
      const lineSum = lines
        .filter(({ metal }) => metal === price.metal)
        .reduce((sum, line) => sum + line[end], 0);
      // The fee of a metal is taken off its own pay, and never more than that.
      const net = Math.max(0, lineSum - Number(price.fee));
      paid.set(price.currency, (paid.get(price.currency) ?? 0) + net);
    }
    return [...paid].map(([currency, amount]) => money(amount, currency, locale)).join(" + ");
  };
  return {
    facts: prices.flatMap((price) => factsOf(price, locale)),
    rows: lines.map((line) => rowOf(line, lot.prices[line.metal]!, library, locale)),
    totalLow: total("payLow"),
    totalHigh: total("payHigh"),
    left: left.join(", "),
    melts: meltsOf(lot, items, melts, locale),
  };
}

/** The gold of the lot if it is melted like this house's melts so far, beside the free interval; empty while nothing is known. */
function meltsOf(
  lot: Lot,
  items: readonly LotItem[],
  melts: AssayedMelts,
  locale: Locale,
): readonly string[] {
  const weighed = items.flatMap((item) =>
    item.counts && item.weighed?.metal === "gold" ? [item.weighed] : [],
  );
  const told = weighed[0] && meltsSay(melts, weighed[0].measured.confidence, locale);
  if (!told) return [];
  const gold = told.split && goldOfMelt(weighed, told.split.next);
  if (!gold) return [told.says];
  const t = tellerOf(locale);
  const fine = t("lots.totals.range", {
    low: fixed(gold.lowG, 2, locale),
    high: fixed(gold.highG, 2, locale),
    unit: "g",
  });
  const price = lot.prices.gold;
  const pay = (grams: number) => price && fixed(rounded(payFor(grams, price), price.rounding), 2, locale);
  return [
    told.says,
    price
      ? t("assay.own-melts.lot-paid", {
          fine,
          low: pay(gold.lowG) ?? "",
          high: pay(gold.highG) ?? "",
          currency: price.currency,
        })
      : t("assay.own-melts.lot", { fine }),
    t("assay.own-melts.only"),
  ];
}

const money = (amount: number, currency: string, locale: Locale) => `${fixed(amount, 2, locale)} ${currency}`;

function factsOf(price: LotPrice, locale: Locale): (readonly [string, string])[] {
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
      t("payout.facts.source-is", { source: price.source, at: price.at, locked: whenOf(price.lockedAt) }),
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
  ];
}

function rowOf(line: PayoutLine, price: LotPrice, library: Library, locale: Locale): PayoutRow {
  const t = tellerOf(locale);
  const name = nameIn(library, line.claim, locale);
  const grams = (mass: number) => `${fixed(mass, 2, locale)} g`;
  const fineIn = (gramsPer: number, decimals: number, unit: string) => {
    const [low, high] = [line.fineLowG, line.fineHighG].map((mass) =>
      fixed(mass / gramsPer, decimals, locale),
    );
    return line.saidBy === "density"
      ? t("lots.totals.range", { low: low!, high: high!, unit })
      : `${low} ${unit}`;
  };
  return {
    what:
      line.saidBy === "density"
        ? t("payout.pieces", { name, count: line.tickets.length })
        : t("payout.one-piece", { name, ticket: line.tickets.join(", ") }),
    net:
      line.deductedG > 0
        ? t("payout.deducted", { net: grams(line.netG), deducted: grams(line.deductedG) })
        : grams(line.netG),
    fineness: finenessOf(line, locale),
    saidBy: t(`payout.sayers.${line.saidBy}`),
    fine:
      price.per === "g"
        ? fineIn(1, 2, "g")
        : `${fineIn(1, 2, "g")} = ${fineIn(Number(gramsPerUnit[price.per]), 3, price.per)}`,
    payLow: money(line.payLow, price.currency, locale),
    payHigh: money(line.payHigh, price.currency, locale),
  };
}

function finenessOf({ netG, fineLowG, fineHighG, saidBy, beside }: PayoutLine, locale: Locale): string {
  const t = tellerOf(locale);
  // The upper end of the mass goes with that of the fineness; no fineness is above 1000 ‰ by it.
  const permille = (grams: number) => fixed(Math.min(1000, (1000 * grams) / netG), 0, locale);
  if (saidBy === "density") return t("payout.range", { low: permille(fineLowG), high: permille(fineHighG) });
  if (!beside) return `${permille(fineLowG)} ‰`;
  const ends = [fixed(beside.lowPermille, 0, locale), fixed(beside.highPermille, 0, locale)] as const;
  return beside.fits
    ? t("payout.fits", { permille: permille(fineLowG), low: ends[0], high: ends[1] })
    : t("payout.fits-not", { permille: permille(fineLowG), low: ends[0], high: ends[1] });
}
