import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { message } from "../../../calibration/message.ts";
import { Payout, type PayoutView } from "../../../views/lots/payout.tsx";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { assayedMelts } from "../../laboratory/assayed-melts.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { termsWithLaboratory } from "../../lots/laboratory-terms.ts";
import type { LotItem } from "../../lots/lot-item.ts";
import type { LotRepository } from "../../lots/lot-repository.ts";
import type { Library } from "../../metals/library.ts";
import type { Station } from "../../station/station.ts";
import { seenOf } from "../about.ts";
import { NumberEntries } from "../evidence/evidence-form.ts";
import { frameOf, lookOf } from "../look.ts";
import { fieldsOf, html } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { noLotPage } from "./no-lot.tsx";
import { sheetOf } from "./payout-sheet.ts";
import { typedPrice } from "./typed-price.ts";

interface PayoutParts {
  station: Station;
  ledger: Ledger;
  lots: LotRepository;
  demo: boolean;
  library: () => Library;
  /** called after a price was locked */
  priceLocked: () => void;
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
  ticket: "",
  deducted: "",
  permille: "",
  saidBy: "stamp",
  by: "",
};

/** The worksheet from fine mass to money. A price is locked with its source and time; it is never looked up. */
export function payoutRoutes(
  app: FastifyInstance,
  { station, ledger, lots, demo, library, priceLocked }: PayoutParts,
): void {
  async function worksheet(request: LotRequest, reply: FastifyReply, refused?: Refused) {
    const around = frameOf(request, reply, { path: "/lots", demo });
    const lot = await lots.lot(request.params.lot);
    if (!lot) return noLotPage(reply, around);
    const items = await lots.items(lot.id, library());
    const terms = await termsWithLaboratory(ledger, lot, items);
    const sheet = sheetOf({ ...lot, terms }, items, {
      library: library(),
      melts: await assayedMelts(ledger),
      locale: around.locale,
    });
    const view: PayoutView = {
      lotId: lot.id,
      lotName: lot.name,
      values: { ...empty, ...refused?.values },
      problems: refused?.problems ?? [],
      ...(sheet ? { sheet } : {}),
      csrfToken: around.csrfToken,
      about: { subject: lot.id, seen: (await ledger.entriesOf(lot.id)).length },
    };
    return html(
      reply,
      page({
        ...around,
        title: tellerOf(around.locale)("payout.title", { lot: lot.name }),
        main: <Payout {...view} />,
      }),
      refused ? 422 : 200,
    );
  }

  app.get<{ Params: { lot: string } }>("/lots/:lot/payout", (request, reply) => worksheet(request, reply));
  app.post<{ Params: { lot: string } }>(
    "/lots/:lot/payout",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const values = fieldsOf(request);
      const typed = typedLotPrice(values, lookOf(request).locale);
      if ("problems" in typed) return worksheet(request, reply, { values, problems: typed.problems });
      const { lot } = request.params;
      try {
        await station.do({ do: "lock-price", ...seenOf(lot, values), price: typed });
        priceLocked();
        return reply.redirect(`/lots/${lot}/payout`, 303);
      } catch (error) {
        const refused = refusalOf(error);
        const { says, field = "price" } = refused;
        return worksheet(request, reply, { values, problems: [{ fieldId: field, error: says }] });
      }
    },
  );

  app.post<{ Params: { lot: string } }>(
    "/lots/:lot/terms",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const values = fieldsOf(request);
      const lot = await lots.lot(request.params.lot);
      if (!lot) return worksheet(request, reply);
      const items = await lots.items(lot.id, library());
      const item = items.findLast(({ ticket }) => ticket === values.ticket?.trim());
      const typed = typedTerms(values, lookOf(request).locale, item);
      if ("problems" in typed) return worksheet(request, reply, { values, problems: typed.problems });
      try {
        await station.do({ do: "state-terms", ...seenOf(lot.id, values), terms: typed });
        return reply.redirect(`/lots/${lot.id}/payout`, 303);
      } catch (error) {
        const refused = refusalOf(error);
        const { says, field = "ticket" } = refused;
        return worksheet(request, reply, { values, problems: [{ fieldId: field, error: says }] });
      }
    },
  );
}

/** Stones and a stated fineness of a piece, or what is wrong with them. */
function typedTerms(values: Record<string, string>, locale: Locale, item: LotItem | undefined) {
  const numbers = new NumberEntries(values, locale);
  if (!item) numbers.refuse("ticket", message("lot.ticket-unknown", { ticket: values.ticket?.trim() ?? "" }));
  const given = (name: string) => (values[name] ?? "").trim() !== "";
  const deducted = given("deducted")
    ? numbers.text("deducted", "form.field.taken-off", { from: 0, to: item?.dryG ?? 100_000, unit: "g" })
    : undefined;
  const permille = given("permille")
    ? numbers.text("permille", "form.field.fineness", { from: 1, to: 1000, unit: "‰" })
    : undefined;
  if (numbers.problems.length > 0 || !item) return { problems: numbers.problems };
  const saidBy = sayers.find((one) => one === values.saidBy) ?? "stamp";
  return {
    piece: item.id,
    ...(deducted === undefined ? {} : { deducted_g: deducted }),
    ...(permille === undefined ? {} : { fineness: { permille, saidBy } }),
    ...(given("by") ? { by: (values.by ?? "").trim() } : {}),
  };
}

const sayers = ["stamp", "laboratory", "customer"] as const;
const directions = ["down", "half-even", "up"] as const;
function typedLotPrice(values: Record<string, string>, locale: Locale) {
  const numbers = new NumberEntries(values, locale);
  const price = typedPrice(values, numbers);
  const ratePercent = numbers.text("rate", "form.field.rate", { from: 1, to: 100, unit: "%" });
  const fee =
    (values.fee ?? "").trim() === ""
      ? "0"
      : numbers.text("fee", "form.field.fee", { from: 0, to: 100_000, unit: "" });
  if (numbers.problems.length > 0) return { problems: numbers.problems };
  return {
    metal: values.metal === "silver" ? ("silver" as const) : ("gold" as const),
    ...price,
    ratePercent,
    fee,
    rounding: directions.find((one) => one === values.rounding) ?? "down",
  };
}
