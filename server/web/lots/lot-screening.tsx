import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { message } from "../../../calibration/message.ts";
import { Refusal as Refused } from "../../../calibration/refusal.ts";
import { massUnits } from "../../../calibration/units.ts";
import { waterRange } from "../../../calibration/water.ts";
import { heartbeatSeconds } from "../../../views/bench/index.tsx";
import { LiveReading } from "../../../views/bench/live-reading.tsx";
import { LotBalance } from "../../../views/lots/balance.tsx";
import { LotPage, LotPart } from "../../../views/lots/show.tsx";
import type { LotView } from "../../../views/lots/view.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page, render } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { announcedFor } from "../../lots/announced.ts";
import type { Lot } from "../../lots/lot.ts";
import type { LotBook } from "../../lots/lot-book.ts";
import type { LotPiece } from "../../lots/lot-piece.ts";
import type { Library } from "../../metals/library.ts";
import { isRole } from "../../methods/index.ts";
import type { Bench } from "../../station/bench.ts";
import type { SecondUnit } from "../../station/bench-settings.ts";
import { Refusal } from "../../weighing/refusal.ts";
import { typedCelsius, typedReading } from "../../weighing/typed-reading.ts";
import { type Draw, LiveStream } from "../live-stream.ts";
import { frameOf, ownMark } from "../look.ts";
import { fieldsOf, html, wantsPart } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { closeLot, flagPiece, weighAgain } from "./lot-deeds.ts";
import { lotView, stepOf } from "./lot-view.ts";

interface ScreeningParts {
  bench: Bench;
  ledger: Ledger;
  book: LotBook;
  claims: (locale: Locale) => { id: string; name: string }[];
  demo: boolean;
  library: () => Library;
  /** the house's second unit of mass */
  second: () => SecondUnit;
}

type LotRequest = FastifyRequest<{ Params: { lot: string } }>;

/** Screening a lot on the one bench: ticket, dry, immersed, next. The record of a piece is written by itself. */
export function screeningRoutes(
  app: FastifyInstance,
  { bench, ledger, book, claims, demo, library, second }: ScreeningParts,
): void {
  const live = new LiveStream(
    new Map<string, Draw>([
      [
        "live-reading",
        (_, locale) =>
          render(<LiveReading live={bench.scale?.live()} waitingFor={bench.waitingFor} />, locale),
      ],
    ]),
    heartbeatSeconds * 1000,
  );
  bench.onLine(() => live.changed("live-reading"));
  bench.onChange(() => live.changed("live-reading"));
  app.addHook("preClose", async () => live.close());
  app.get("/lots/live", (request, reply) => live.join(request, reply, ""));

  async function screening(request: LotRequest, reply: FastifyReply, problem?: LotView["problem"]) {
    const around = frameOf(request, reply, { path: "/lots", demo });
    const lot = await book.lot(request.params.lot);
    if (!lot)
      return html(
        reply,
        page({ ...around, title: tellerOf(around.locale)("lots.none"), main: <Problem says={noLot} /> }),
        404,
      );
    const pieces = await book.pieces(lot.id, library());
    const announced = await announcedFor(ledger, lot);
    const { piece } = bench;
    const view: LotView = {
      ...lotView(lot, pieces, announced, {
        bench,
        library: library(),
        locale: around.locale,
        second: second(),
      }),
      ...(bench.scale
        ? {
            live: (
              <LotBalance
                live={{ live: bench.scale.live(), waitingFor: bench.waitingFor }}
                {...(demo ? { demoToken: around.csrfToken } : {})}
              />
            ),
          }
        : {}),
      claims: claims(around.locale),
      claim: pieces.at(-1)?.claim ?? lot.claim ?? "",
      units: massUnits,
      unit: pieces.at(-1)?.shown.unit ?? lot.gross?.unit ?? "g",
      ...(problem ? { problem } : {}),
      csrfToken: around.csrfToken,
      stepKey: piece && !piece.closed ? `${piece.id}-${piece.captures.length}` : bench.nextPiece,
    };
    const status = problem ? 422 : 200;
    if (wantsPart(request)) return html(reply, render(<LotPart {...view} />, around.locale), status);
    return html(reply, page({ ...around, title: lot.name, main: <LotPage {...view} /> }), status);
  }

  app.get<{ Params: { lot: string } }>("/lots/:lot", (request, reply) => screening(request, reply));
  /** A form of the lot: what it asks is done, or refused in words with everything typed still in its field. */
  function deed(
    path: string,
    does: (
      lot: Lot,
      fields: Record<string, string>,
      pieces: readonly LotPiece[],
      request: FastifyRequest,
    ) => Promise<unknown>,
  ): void {
    app.post<{ Params: { lot: string } }>(
      `/lots/:lot/${path}`,
      { preHandler: app.csrfProtection },
      async (request, reply) => {
        const fields = fieldsOf(request);
        try {
          const lot = await book.lot(request.params.lot);
          if (!lot) throw new Refusal(noLot);
          await does(lot, fields, await book.pieces(lot.id, library()), request);
          return wantsPart(request) ? screening(request, reply) : reply.redirect(`/lots/${lot.id}`, 303);
        } catch (error) {
          const { says } = refusalOf(error);
          return screening(request, reply, { says, typed: fields });
        }
      },
    );
  }

  const parts = { bench, ledger, book, simulated: demo };
  deed("pieces", goOn);
  deed("right-piece", (_, { rightReason = "", rightBy = "" }) => bench.sayRightPiece(rightReason, rightBy));
  deed("other-piece", () => bench.openAgain());
  deed("flags", (lot, fields, pieces) => flagPiece(parts, lot, pieces, fields));
  deed("again", (_, fields, pieces) => weighAgain(parts, pieces, fields));
  deed("closing", (lot, fields, pieces) => closeLot(parts, lot, pieces, fields));

  /** The next step of the lot: the water, a ticket, a weighing, or the piece put aside. A complete piece is recorded. */
  async function goOn(
    lot: Lot,
    fields: Record<string, string>,
    _: readonly LotPiece[],
    request: FastifyRequest,
  ): Promise<void> {
    const { celsius, ticket, claim = "", typed, unit = "g", role = "", take, aside, step: key = "" } = fields;
    if (lot.closed)
      throw new Refusal(`The lot ${lot.name} is closed and takes no more pieces. Open a new one.`);
    if (celsius !== undefined) {
      const water = typedCelsius(celsius, waterRange, { mark: ownMark(request), at: "celsius" });
      await ledger.append("lot-water", lot.id, { celsius: water });
      return;
    }
    if (ticket !== undefined) return openPiece(lot, ticket.trim() || (fields.nextTicket ?? ""), claim, key);
    if (stepOf(lot, bench).step === "elsewhere" || bench.piece?.lot !== lot.id)
      throw new Refusal("The piece on the bench is not of this lot. Reload the page.");
    if (aside === "yes") return bench.setAsidePiece(`put aside while screening ${lot.name}`);
    if (typed !== undefined) {
      const reading = typedReading(typed, unit, { mark: ownMark(request), at: "typed" });
      if (!isRole(role)) throw new Refusal(`"${role}" is no reading of a weighing. Reload the page.`);
      await bench.typeReading(role, reading, key);
    } else if (take !== undefined && isRole(take)) await taken(bench, take);
    if (stepDone(lot) && bench.secondPersonDue === undefined) await bench.record();
  }

  async function openPiece(lot: Lot, ticket: string, claim: string, key: string): Promise<void> {
    if (ticket === "") throw new Refusal("The ticket is empty. Scan it again, or type it.", "ticket");
    if (claim !== "" && !library().has(claim))
      throw new Refusal(`No metal is called "${claim}" here. Right: one of the list.`, "claim");
    if (lot.waterCelsius === undefined)
      throw new Refusal("Type the temperature of the water first.", "celsius");
    const before = (await book.pieces(lot.id, library())).find(
      (piece) => piece.ticket === ticket && !piece.voided,
    );
    if (before && before.id !== key)
      throw new Refusal(
        `Ticket ${ticket} was weighed in this lot already (${before.dryG} g). Scan the next one; to weigh it again, void its record first.`,
        "ticket",
      );
    const id = key || bench.nextPiece;
    const { method, id: lotId } = lot;
    const listed = (await announcedFor(ledger, lot)).find((one) => one.ticket === ticket);
    const broughtBy = listed?.customer ?? lot.from;
    // What a list says of this very ticket goes before the claim that stood from the piece before.
    const said = listed?.claim !== undefined && library().has(listed.claim) ? listed.claim : claim;
    await bench.openPiece(
      {
        ticket,
        description: listed?.description ?? "",
        method,
        lot: lotId,
        ...(said === "" ? {} : { claim: said }),
        ...(broughtBy === undefined ? {} : { customer: broughtBy }),
        ...(listed?.mass_g === undefined ? {} : { customerSupplied: { mass_g: listed.mass_g } }),
      },
      id,
    );
    await bench.stateWater(lot.waterCelsius, `${id}-water`);
  }

  function stepDone(lot: Lot): boolean {
    const { piece } = bench;
    if (!piece || piece.closed || piece.lot !== lot.id) return false;
    return piece.captures.some(({ role, setAside }) => role !== "dry" && setAside === undefined);
  }
}

const noLot = "No such lot is in this ledger. Look for it in the list of lots.";

/** Asks for a settled reading and waits until it is there. Throws Refusal when the balance gave none. */
async function taken(bench: Bench, role: Parameters<Bench["requestCapture"]>[0]): Promise<void> {
  const before = bench.piece?.captures.length ?? 0;
  bench.requestCapture(role);
  await new Promise<void>((resolve) => {
    const end = bench.onChange(() => {
      if (bench.waitingFor !== undefined) return;
      end();
      resolve();
    });
  });
  if ((bench.piece?.captures.length ?? 0) > before) return;
  const { trouble = message("balance.capture.called-off") } = bench;
  if (typeof trouble === "string") throw new Refusal(trouble);
  throw new Refused(trouble.code, trouble.params);
}
