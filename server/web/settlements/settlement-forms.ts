import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { preciousMetals } from "../../metals/precious-metal.ts";
import { intervalEnds, sources, statedSources, weighings } from "../../settlements/source.ts";
import { type Entries, refuseEntry } from "../forms/form.ts";
import { pers, priceMoment } from "./typed-price.ts";

const roundings = ["down", "half-even", "up"] as const;

/** Who says it and why; whether they must is decided where it is known what was said before. */
const signedBy = ({ maybeText }: Entries) => ({
  by: maybeText({ most: 100 }),
  second: maybeText({ most: 100 }),
  reason: maybeText({ most: 400 }),
});

/** The entries of a price as it was found. */
const priceEntries = ({ decimal, text, choice }: Entries) => ({
  price: decimal({ what: message("form.field.price"), from: 0.001, to: 1_000_000 }),
  currency: text({ missing: message("price.refused.currency", { currency: "" }) }),
  per: choice(pers, { first: "ozt" }),
  source: text({ missing: message("price.refused.no-source") }),
  at: text({ missing: message("price.refused.no-moment", { at: "" }) }),
});

/** Refuses a currency that is none and a moment that is none or has not come; gives the moment. */
function refusePrice(
  { currency, at }: { currency: string; at: string },
  context: z.RefinementCtx,
  place: { zone: string; now: Date },
): void {
  if (!/^[A-Z]{3}$/.test(currency.toUpperCase()))
    refuseEntry(context, "currency", message("price.refused.currency", { currency }));
  const found = priceMoment(at, place);
  if ("message" in found) refuseEntry(context, "at", found.message);
}

/** A price of fine metal as somebody found it, for a sum that nothing is stored of. */
export const foundPriceForm = (place: { zone: string; now: Date }) => (entries: Entries) =>
  z
    .object(priceEntries(entries))
    .superRefine((values, context) => refusePrice(values, context, place))
    .transform((price) => ({ ...price, currency: price.currency.toUpperCase() }));

export type FoundPrice = z.infer<ReturnType<ReturnType<typeof foundPriceForm>>>;

/** A price with its terms. */
export const priceForm = (place: { zone: string; now: Date }) => (entries: Entries) => {
  const { decimal, maybeDecimal, choice } = entries;
  return z
    .object({
      metal: choice(preciousMetals, { first: "gold" }),
      ...priceEntries(entries),
      rate: decimal({ what: message("form.field.rate"), from: 1, to: 100, unit: "%" }),
      fee: maybeDecimal({ what: message("form.field.fee"), from: 0, to: 100_000 }),
      covers: maybeDecimal({ what: message("payout.covers"), from: 0.001, to: 1_000_000, unit: "g" }),
      rounding: choice(roundings, { first: "down" }),
      ...signedBy(entries),
    })
    .superRefine((values, context) => refusePrice(values, context, place))
    .transform(({ rate: ratePercent, fee = "0", covers, by, second, reason, currency, ...price }) => {
      const found = priceMoment(price.at, place);
      return {
        ...price,
        currency: currency.toUpperCase(),
        ratePercent,
        fee,
        ...("moment" in found ? { moment: found.moment } : {}),
        ...(covers === undefined ? {} : { covers_g: covers }),
        ...(by === undefined ? {} : { by }),
        ...(second === undefined ? {} : { second }),
        ...(reason === undefined ? {} : { reason }),
      };
    });
};

/** Stones and a stated fineness of a piece; what is empty stays as it was said. */
export const termsForm = (entries: Entries) => {
  const { maybeDecimal, text, choice } = entries;
  return z
    .object({
      ticket: text({ missing: message("lot.ticket-missing") }),
      deducted: maybeDecimal({ what: message("form.field.taken-off"), from: 0, to: 100_000, unit: "g" }),
      permille: maybeDecimal({ what: message("form.field.fineness"), from: 1, to: 1000, unit: "‰" }),
      metal: choice([...preciousMetals, "of-claim"], { first: "of-claim" }),
      saidBy: choice(statedSources, { first: "stamp" }),
      action: choice(["state", "withdraw"], { first: "state" }),
      ...signedBy(entries),
    })
    .transform(({ metal, ...rest }) => ({ ...rest, ...(metal === "of-claim" ? {} : { metal }) }));
};

/** What a named person decides on a piece. */
export const decisionForm = (entries: Entries) =>
  z
    .object({
      decided: entries.text({ missing: message("lot.ticket-missing") }),
      pays: entries.choice(["yes", "no"]),
      mass: entries.choice(weighings, { first: "first" }),
      ...signedBy(entries),
    })
    .transform(({ by = "", second, reason = "", pays, ...rest }) => ({
      ...rest,
      pays: pays === "yes",
      by,
      ...(second === undefined ? {} : { second }),
      reason,
    }));

/** Who is believed before whom. */
export const trustForm = (entries: Entries) => {
  const { choice, box } = entries;
  return z
    .object({
      "trust-1": choice(sources),
      "trust-2": choice(sources),
      "trust-3": choice(sources),
      "trust-4": choice(sources),
      "trust-5": choice(sources),
      ends: choice(intervalEnds, { first: "low" }),
      narrowed: box(),
      ...signedBy(entries),
    })
    .superRefine((values, context) => {
      const order = orderOf(values);
      for (const [place, source] of order.entries())
        if (order.indexOf(source) < place)
          refuseEntry(context, `trust-${place + 1}`, message("settlement.trust.twice"));
    })
    .transform(({ ends: pays, narrowed, by = "", second, reason = "", ...order }) => ({
      ...(second === undefined ? {} : { second }),
      trust: orderOf(order),
      pays,
      ...(narrowed ? { narrowed: true as const } : {}),
      by,
      reason,
    }));
};

type Order = Record<`trust-${1 | 2 | 3 | 4 | 5}`, (typeof sources)[number]>;

const orderOf = (of: Order) => [of["trust-1"], of["trust-2"], of["trust-3"], of["trust-4"], of["trust-5"]];

/** A closed lot opened again. */
export const reopeningForm = (entries: Entries) =>
  z.object(signedBy(entries)).transform(({ by = "", reason = "", second = "" }) => ({ by, reason, second }));
