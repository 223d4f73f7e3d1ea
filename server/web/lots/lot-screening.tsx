import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { Refusal } from "../../../calibration/refusal.ts";
import { massUnits } from "../../../calibration/units.ts";
import { heartbeatSeconds } from "../../../views/bench/index.tsx";
import { LotBalance, LotChanges, LotLive } from "../../../views/lots/balance.tsx";
import { LotPage } from "../../../views/lots/show.tsx";
import { type LotView, nothingClaimed } from "../../../views/lots/view.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { page, render } from "../../../views/page.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { announcedFor } from "../../lots/announced.ts";
import type { Lot } from "../../lots/lot.ts";
import type { LotItem } from "../../lots/lot-item.ts";
import type { LotRepository } from "../../lots/lot-repository.ts";
import type { Library } from "../../metals/library.ts";
import { totalsText } from "../../settlements/settlement.ts";
import { lotSettlement } from "../../settlements/settlement-repository.ts";
import type { Bench } from "../../station/bench.ts";
import type { SecondUnit } from "../../station/bench-settings.ts";
import { weighingOf } from "../../weighing/evolve.ts";
import { askOf, isImpossible } from "../../weighing/stop-checks.ts";
import { type Draw, LiveStream } from "../live-stream.ts";
import { frameOf, lookOf } from "../look.ts";
import { asTyped, html, wantsPart } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import type { Manner } from "../when.ts";
import { lotForms } from "./lot-forms.ts";
import { lotRun } from "./lot-run.ts";
import { lotView } from "./lot-view.ts";
import { noLotPage } from "./no-lot.tsx";

interface ScreeningParts {
  bench: Bench;
  ledger: Ledger;
  lots: LotRepository;
  claims: (locale: Locale) => { id: string; name: string }[];
  demo: boolean;
  library: () => Library;
  /** the house's second unit of mass */
  second: () => SecondUnit;
  /** called once a lot was closed: its settlement is printed in the language of the page */
  closed: (lot: string, manner: Manner) => Promise<void>;
}

type LotRequest = FastifyRequest<{ Params: { lot: string } }>;

/** Screening a lot on the one bench: ticket, dry, immersed, next. The record of a piece is written by itself. */
export function screeningRoutes(
  app: FastifyInstance,
  { bench, ledger, lots, claims, demo, library, second, closed }: ScreeningParts,
): void {
  const liveView = () => ({
    live: bench.live,
    waitingFor: bench.waitingFor,
    handsFree: bench.handsFree.now,
  });
  const live = new LiveStream(
    new Map<string, Draw>([
      ["live-reading", (_, locale) => render(<LotLive {...liveView()} />, locale)],
      ["lot-changes", () => render(<LotChanges seen={changesOf(bench)} />)],
    ]),
    heartbeatSeconds * 1000,
  );
  bench.handsFree.runsLots(lotRun({ bench, ledger, lots, library }));
  bench.onLine(() => live.changed("live-reading"));
  bench.onChange(() => live.changed("live-reading", "lot-changes"));
  app.addHook("preClose", async () => live.close());
  app.get("/lots/live", (request, reply) => live.join(request, reply, ""));

  async function screening(request: LotRequest, reply: FastifyReply, problem?: LotView["problem"]) {
    const around = frameOf(request, reply, { path: "/lots", demo });
    const found = await lotSettlement(request.params.lot, { ledger, lots, library: library() });
    if (!found) return noLotPage(reply, around);
    const { lot, items, sums, questions, settled } = found;
    const announced = await announcedFor(ledger, lot);
    const view: LotView = {
      ...lotView(lot, items, sums, announced, {
        bench,
        library: library(),
        locale: around.locale,
        zone: around.zone,
        second: second(),
      }),
      ...(bench.scale
        ? {
            live: (
              <LotBalance
                live={liveView()}
                changes={changesOf(bench)}
                {...(demo ? { demoToken: around.csrfToken } : {})}
              />
            ),
          }
        : {}),
      handsFree: bench.handsFree.now?.lot === lot.id,
      claims: claims(around.locale),
      claim: claimOfLot(lot),
      units: massUnits,
      unit: items.at(-1)?.shown.unit ?? lot.gross?.unit ?? "g",
      ...(problem ? { problem } : {}),
      csrfToken: around.csrfToken,
      about: bench.about,
      version: found.entries.length,
      closingAsks: questions,
      ...(settled ? { pays: totalsText(settled) } : {}),
      stopped: await stoppedOf(ledger, items),
    };
    const status = problem ? 422 : 200;
    if (wantsPart(request)) return html(reply, render(<LotPage {...view} />, around.locale), status);
    return html(
      reply,
      page({ ...around, title: lot.name, ownHeading: true, main: <LotPage {...view} /> }),
      status,
    );
  }

  app.get<{ Params: { lot: string } }>("/lots/:lot", (request, reply) => screening(request, reply));
  for (const [path, does] of Object.entries(lotForms({ bench, ledger, lots, library })))
    app.post<{ Params: { lot: string } }>(
      `/lots/:lot/${path}`,
      { preHandler: app.csrfProtection },
      async (request, reply) => {
        try {
          const lot = await lots.lot(request.params.lot);
          if (!lot) throw new Refusal("lot.none");
          await does({ lot, items: await lots.items(lot.id, library()), request });
          if (path === "closing") await closed(lot.id, lookOf(request));
          return wantsPart(request) ? screening(request, reply) : reply.redirect(`/lots/${lot.id}`, 303);
        } catch (error) {
          const refused = refusalOf(error);
          return screening(request, reply, {
            ...refused,
            from: request.url,
            typed: typedStill(asTyped(request), bench),
          });
        }
      },
    );
}

/** What of the bench a page of a lot follows: the piece on it, its readings, and what hands-free told. */
function changesOf({ item, handsFree }: Bench): string {
  const readings = item?.captures.length ?? 0;
  return [
    item?.id,
    readings,
    item?.closed?.how,
    handsFree.now !== undefined,
    handsFree.now?.heard?.count,
  ].join(" ");
}

/** What a ticket that is on no list is claimed as: what the lot is; "" asks. Never what the piece before was. */
function claimOfLot({ claim = "", nothingClaimed: none }: Lot): string {
  return none ? nothingClaimed : claim;
}

/** What was typed, for the fields of a page that is still about the same; of another item it is told in the refusal. */
function typedStill(fields: Record<string, string>, { about }: Bench): Record<string, string> {
  return fields.typed !== undefined && fields.subject !== about.subject ? {} : fields;
}

/** The records of the lot that a check stops, each with its questions and how much of it this page shows. */
async function stoppedOf(ledger: Ledger, items: readonly LotItem[]): Promise<LotView["stopped"]> {
  const stopped: LotView["stopped"][number][] = [];
  for (const { id, ticket, voided, state } of items) {
    if (voided || state !== "no-valid-reading") continue;
    const entries = await ledger.entriesOf(id);
    const stops = weighingOf(entries)?.stops ?? [];
    const asks = stops.map((message) => ({ message, ask: askOf(message) }));
    stopped.push({
      ticket,
      about: { subject: id, seen: entries.length },
      checks: asks,
      answerable: !stops.some(isImpossible),
    });
  }
  return stopped;
}
