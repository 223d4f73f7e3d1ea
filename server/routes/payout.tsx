import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { gramsPerUnit } from "../../calibration/units.ts";
import { Payout, type PayoutView } from "../../views/lots/payout.tsx";
import { fixed } from "../../views/numbers.ts";
import { page } from "../../views/page.tsx";
import { Problem } from "../../views/problem.tsx";
import type { Locale } from "../../views/words/index.ts";
import type { Library } from "../alloys/library.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { LedgerTrouble } from "../ledger/trouble.ts";
import type { Lot, LotPrice } from "../lots/lot.ts";
import type { LotBook } from "../lots/lot-book.ts";
import type { LotPiece } from "../lots/lot-piece.ts";
import { payoutLines } from "../lots/payout.ts";
import { NumberEntries } from "./evidence-form.ts";
import { frameOf, lookOf } from "./look.ts";
import { fieldsOf, html } from "./page-request.ts";
import { nameIn, whenOf } from "./record-view.ts";

interface PayoutParts {
  ledger: Ledger;
  book: LotBook;
  demo: boolean;
  library: () => Library;
}

type LotRequest = FastifyRequest<{ Params: { lot: string } }>;
type Refused = { values: Record<string, string>; problems: PayoutView["problems"] };

const empty = {
  metal: "gold",
  price: "",
  currency: "",
  per: "ozt",
  source: "",
  at: "",
  rate: "",
  fee: "0",
  rounding: "down",
};

/** The worksheet from fine mass to money. A price is locked with its source and time; it is never looked up. */
export function payoutRoutes(app: FastifyInstance, { ledger, book, demo, library }: PayoutParts): void {
  async function worksheet(request: LotRequest, reply: FastifyReply, refused?: Refused) {
    const around = frameOf(request, reply, { path: "/lots", demo });
    const lot = await book.lot(request.params.lot);
    if (!lot)
      return html(
        reply,
        page({ ...around, title: "No such lot", main: <Problem says="No such lot is in this ledger." /> }),
        404,
      );
    const pieces = await book.pieces(lot.id, library());
    const sheet = sheetOf(lot, pieces, library(), around.locale);
    const view: PayoutView = {
      lotId: lot.id,
      lotName: lot.name,
      values: { ...empty, ...refused?.values },
      problems: refused?.problems ?? [],
      ...(sheet ? { sheet } : {}),
      csrfToken: around.csrfToken,
      stepKey: `${lot.id}-price-${(await ledger.entriesOf(lot.id)).length}`,
    };
    return html(
      reply,
      page({ ...around, title: `Payout worksheet of ${lot.name}`, main: <Payout {...view} /> }),
      refused ? 422 : 200,
    );
  }

  app.get<{ Params: { lot: string } }>("/lots/:lot/payout", (request, reply) => worksheet(request, reply));
  app.post<{ Params: { lot: string } }>(
    "/lots/:lot/payout",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const values = fieldsOf(request);
      const typed = typedPrice(values, lookOf(request).locale);
      if ("problems" in typed) return worksheet(request, reply, { values, problems: typed.problems });
      const { lot } = request.params;
      try {
        if (await book.lot(lot))
          await ledger.append("lot-price", lot, typed, values.step ? { key: values.step } : {});
        return reply.redirect(`/lots/${lot}/payout`, 303);
      } catch (error) {
        if (!(error instanceof LedgerTrouble)) throw error;
        return worksheet(request, reply, { values, problems: [{ fieldId: "price", error: error.message }] });
      }
    },
  );
}

const directions = ["down", "half-even", "up"] as const;
const pers = ["ozt", "g", "dwt"] as const;

function typedPrice(values: Record<string, string>, locale: Locale) {
  const numbers = new NumberEntries(values, locale);
  const { currency = "", source = "", at = "" } = values;
  const price = numbers.text("price", "The price", { from: 0.001, to: 1_000_000, unit: "per unit" });
  const ratePercent = numbers.text("rate", "The rate", { from: 1, to: 100, unit: "%" });
  const fee =
    (values.fee ?? "").trim() === ""
      ? "0"
      : numbers.text("fee", "The fee", { from: 0, to: 100_000, unit: "" });
  const code = currency.trim().toUpperCase();
  if (!/^[A-Z]{3}$/.test(code))
    numbers.refuse("currency", `"${currency}" is no currency. Right: its three letters, such as EUR.`);
  if (source.trim() === "")
    numbers.refuse("source", "Where does the price come from? A price without a source settles nothing.");
  if (!/\d{4}-\d{2}-\d{2}[ T]\d{2}:\d{2}/.test(at))
    numbers.refuse(
      "at",
      `"${at}" is no date and time. Right: such as 2026-03-02 14:30, with the zone if it matters.`,
    );
  if (numbers.problems.length > 0) return { problems: numbers.problems };
  return {
    metal: values.metal === "silver" ? ("silver" as const) : ("gold" as const),
    price,
    currency: code,
    per: pers.find((one) => one === values.per) ?? "ozt",
    source: source.trim(),
    at: at.trim(),
    ratePercent,
    fee,
    rounding: directions.find((one) => one === values.rounding) ?? "down",
  };
}

const perNames = { g: "gram", ozt: "troy ounce", dwt: "pennyweight" } as const;
const directionNames = {
  down: "down, to the buyer",
  "half-even": "to the nearest, half to even",
  up: "up, to the seller",
} as const;

function sheetOf(
  lot: Lot,
  pieces: readonly LotPiece[],
  library: Library,
  locale: Locale,
): PayoutView["sheet"] | undefined {
  const prices = Object.values(lot.prices);
  const lines = payoutLines(pieces, lot.prices);
  if (prices.length === 0) return undefined;
  const money = (amount: number, currency: string) => `${fixed(amount, 2, locale)} ${currency}`;
  const fine = (grams: number, { per }: LotPrice) =>
    per === "g"
      ? `${fixed(grams, 2, locale)} g`
      : `${fixed(grams, 2, locale)} g = ${fixed(grams / Number(gramsPerUnit[per]), 3, locale)} ${per}`;
  const total = (end: "payLow" | "payHigh") =>
    prices
      .map((price) => {
        const paid = lines
          .filter(({ metal }) => metal === price.metal)
          .reduce((sum, line) => sum + line[end], 0);
        return money(Math.max(0, paid - Number(price.fee)), price.currency);
      })
      .join(" + ");
  return {
    facts: prices.flatMap((price) => [
      [
        `Price of fine ${price.metal}`,
        `${price.price} ${price.currency} per ${perNames[price.per]}`,
      ] as const,
      [
        `Source (${price.metal})`,
        `${price.source}, as of ${price.at}; locked ${whenOf(price.lockedAt)}`,
      ] as const,
      [
        `Terms (${price.metal})`,
        `${price.ratePercent} % of the price; fee ${price.fee} ${price.currency}; rounded ${directionNames[price.rounding]}`,
      ] as const,
    ]),
    rows: lines.flatMap((line) => {
      const price = lot.prices[line.metal];
      if (!price) return [];
      const permille = (grams: number) => fixed((1000 * grams) / line.netG, 0, locale);
      return [
        {
          what: `${nameIn(library, line.claim)}, ${line.pieces} ${line.pieces === 1 ? "piece" : "pieces"}`,
          net: `${fixed(line.netG, 2, locale)} g`,
          fineness: `${permille(line.fineLowG)} to ${permille(line.fineHighG)} ‰`,
          finenessFrom: "density" as const,
          fineLow: fine(line.fineLowG, price),
          fineHigh: fine(line.fineHighG, price),
          payLow: money(line.payLow, price.currency),
          payHigh: money(line.payHigh, price.currency),
        },
      ];
    }),
    totalLow: total("payLow"),
    totalHigh: total("payHigh"),
    says: "The fineness comes from density and leaves both ends open: the low end is what the pieces hold at least if they are sound alloy of what they are said to be, the high end at most. Pieces that disagree are not counted. A laboratory decides between the ends; what is computed here is for information.",
  };
}
