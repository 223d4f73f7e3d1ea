import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { Refusal } from "../../../calibration/refusal.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { SettlementPage } from "../../../views/settlements/page.tsx";
import type { SettlementForm, SettlementView } from "../../../views/settlements/view.ts";
import { omitUndefined } from "../../compute/omit-undefined.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { LotItem } from "../../lots/lot-item.ts";
import type { LotRepository } from "../../lots/lot-repository.ts";
import { assayedMelts } from "../../melts/assayed-melts.ts";
import type { Library } from "../../metals/library.ts";
import type { SettlementCommandContent } from "../../settlements/commands.ts";
import {
  type LotSettlement,
  lotSettlement,
  settlementAfter,
} from "../../settlements/settlement-repository.ts";
import type { Station } from "../../station/station.ts";
import { seenOf } from "../about.ts";
import { type Entries, type Form, formIn, postedForm } from "../forms/form.ts";
import { frameOf, lookOf } from "../look.ts";
import { noLotPage } from "../lots/no-lot.tsx";
import { asTyped, html } from "../page-request.ts";
import { problemsOf } from "../refused.ts";
import { previewOf } from "./preview-view.ts";
import { decisionForm, priceForm, reopeningForm, termsForm, trustForm } from "./settlement-forms.ts";
import { settlementView } from "./settlement-view.ts";

export interface SettlementParts {
  station: Station;
  ledger: Ledger;
  lots: LotRepository;
  demo: boolean;
  library: () => Library;
  /** of the place; empty where none is stated */
  currency: () => string;
  now: () => Date;
  /** called after a price was promised */
  priceLocked: () => void;
}

type LotRequest = FastifyRequest<{ Params: { lot: string } }>;
type Answer = Pick<SettlementView, "sent" | "values" | "problems"> & Partial<Pick<SettlementView, "preview">>;

const nothingSent: Answer = { sent: undefined, values: {}, problems: [] };

/** The settlement of a lot. A price is promised with its source and time; it is never looked up. */
export function settlementRoutes(app: FastifyInstance, parts: SettlementParts): void {
  const { station, ledger, lots, demo, library, currency, now, priceLocked } = parts;
  const read = (id: string) => lotSettlement(id, { ledger, lots, library: library() });

  async function show(request: LotRequest, reply: FastifyReply, answer: Answer = nothingSent) {
    const around = frameOf(request, reply, { path: "/lots", demo });
    const found = await read(request.params.lot);
    if (!found) return noLotPage(reply, around);
    const drawn = settlementView(found, {
      library: library(),
      melts: await assayedMelts(ledger),
      ...around,
    });
    const view: SettlementView = {
      ...drawn,
      ...answer,
      currency: currency(),
      csrfToken: around.csrfToken,
    };
    const title = tellerOf(around.locale)("payout.title", { lot: found.lot.name });
    const main = <SettlementPage {...view} />;
    return html(reply, page({ ...around, title, main }), answer.problems.length > 0 ? 422 : 200);
  }

  /** Reads a form, and does what it asks; or shows what that would come to, or what is wrong with it. */
  function form<T>(
    end: SettlementForm,
    shape: () => Form<T>,
    ask: (typed: T, lot: LotSettlement) => SettlementCommandContent,
    done = () => {},
  ) {
    app.post<{ Params: { lot: string } }>(
      `/lots/:lot/${end}`,
      { preHandler: app.csrfProtection },
      async (request, reply) => {
        const { lot } = request.params;
        const back = (problems: Answer["problems"], preview?: SettlementView["preview"]) =>
          show(request, reply, {
            sent: end,
            values: asTyped(request),
            problems,
            ...(preview ? { preview } : {}),
          });
        const typed = postedForm(request, shape());
        const found = await read(lot);
        if (!found) return back([]);
        if ("problems" in typed) return back(typed.problems);
        try {
          const command = { ...seenOf(lot, request), ...ask(typed.values, found) };
          if (formIn(request, previewForm).preview) {
            const after = settlementAfter(await station.wouldBe(command), found.items, {
              melts: found.melts,
            });
            return back([], previewOf(found, after, lookOf(request).locale));
          }
          await station.do(command);
          done();
          return reply.redirect(`/lots/${lot}/payout`, 303);
        } catch (error) {
          return back(problemsOf(error, "by"));
        }
      },
    );
  }

  app.get<{ Params: { lot: string } }>("/lots/:lot/payout", (request, reply) => show(request, reply));
  form(
    "payout",
    () => priceForm({ zone: app.zone(), now: now() }),
    (price) => ({ do: "lock-price", price }),
    priceLocked,
  );
  form(
    "terms",
    () => termsForm,
    (typed, { items }) => ({ do: "state-terms", terms: [termsOf(typed, items)] }),
  );
  form(
    "decisions",
    () => decisionForm,
    ({ decided, ...decision }, { items }) => ({
      do: "decide-item",
      decision: { ...decision, piece: itemOf(decided, items, "decided").id },
    }),
  );
  form(
    "trust",
    () => trustForm,
    (trust) => ({ do: "state-trust", trust }),
  );
  form(
    "reopening",
    () => reopeningForm,
    (typed) => ({ do: "reopen-lot", ...typed }),
  );
}

const previewForm = ({ box }: Entries) => z.object({ preview: box() });

type TypedTerms = ReturnType<typeof termsForm>["_output"];

function termsOf(
  { ticket, deducted, permille, metal, saidBy, action, by, second, reason }: TypedTerms,
  items: readonly LotItem[],
): Extract<SettlementCommandContent, { do: "state-terms" }>["terms"][number] {
  const item = itemOf(ticket, items, "ticket");
  const signed = omitUndefined({ by, second, reason });
  if (action === "withdraw") {
    const of = metal ?? item.metal;
    if (of === null) throw new Refusal("settlement.which-metal", { ticket }, "metal");
    return { piece: item.id, withdrawn: [{ saidBy, metal: of }], ...signed };
  }
  return {
    piece: item.id,
    ...(deducted === undefined ? {} : { deducted_g: deducted }),
    ...(permille === undefined ? {} : { fineness: { permille, saidBy, ...(metal ? { metal } : {}) } }),
    ...signed,
  };
}

/** The piece of the lot with this ticket; the newest when a voided one has the same. */
function itemOf(ticket: string, items: readonly LotItem[], field: string): LotItem {
  const found = items.findLast((item) => item.ticket === ticket);
  if (found) return found;
  throw new Refusal("lot.ticket-unknown", { ticket }, field);
}
