import { randomUUID } from "node:crypto";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { Refusal } from "../../../calibration/refusal.ts";
import type { DecimalMark } from "../../../calibration/typed-number.ts";
import { massUnits, toGrams } from "../../../calibration/units.ts";
import { LotsIndex, type LotsPage } from "../../../views/lots/index.tsx";
import { nothingClaimed } from "../../../views/lots/view.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { LotRepository } from "../../lots/lot-repository.ts";
import type { Library } from "../../metals/library.ts";
import { firstMethod, methods } from "../../methods/index.ts";
import { settlementOf } from "../../settlements/evolve.ts";
import { currentPrices } from "../../settlements/settlement.ts";
import type { Bench } from "../../station/bench.ts";
import { timeZoneOf } from "../../station/bench-settings.ts";
import type { SettingsRepository } from "../../station/settings-repository.ts";
import { typedReading } from "../../weighing/typed-reading.ts";
import { frameOf, ownMark } from "../look.ts";
import { claimOptions } from "../metals/claim-options.ts";
import { fieldsOf, html } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { printRoutes, printSettlement } from "../settlements/prints.ts";
import { settlementRoutes } from "../settlements/settlement.tsx";
import { screeningRoutes } from "./lot-screening.tsx";
import { lotRow } from "./lot-view.ts";

export interface LotRouteParts {
  bench: Bench;
  ledger: Ledger;
  settings: SettingsRepository;
  demo: boolean;
  library: () => Library;
  /** where printed papers lie, beside the ledger */
  reports: string;
  /** called after a price was locked */
  priceLocked: () => void;
}

/** How many lots the list shows. */
const lotsShown = 50;

/** Lots: taken in as a whole, screened piece by piece on the one bench, and priced. */
export function lotRoutes(
  app: FastifyInstance,
  { bench, ledger, reports, settings, demo, library, priceLocked }: LotRouteParts,
): void {
  const book = new LotRepository(ledger);
  const claims = (locale: Locale) => claimOptions(library(), locale, settings.now.metal);
  const frame = (request: FastifyRequest, reply: FastifyReply) =>
    frameOf(request, reply, { path: "/lots", demo });
  let nextLot = `lot-${randomUUID()}`;

  async function list(
    request: FastifyRequest,
    reply: FastifyReply,
    refused?: Pick<LotsPage, "values" | "problems">,
  ) {
    const around = frame(request, reply);
    const lots = await book.newest(lotsShown);
    const view: LotsPage = {
      lots: lots.map(({ lot, entries, pieces }) => {
        const priced = currentPrices(settlementOf(entries)).map(({ metal }) => metal);
        return lotRow({ lot, pieces, priced }, around.locale);
      }),
      claims: claims(around.locale),
      units: massUnits,
      values: {},
      problems: [],
      ...refused,
      csrfToken: around.csrfToken,
      stepKey: nextLot,
    };
    return html(
      reply,
      page({ ...around, title: tellerOf(around.locale)("lots.title"), main: <LotsIndex {...view} /> }),
      refused ? 422 : 200,
    );
  }

  app.get("/lots", (request, reply) => list(request, reply));
  app.post("/lots", { preHandler: app.csrfProtection }, async (request, reply) => {
    const values = fieldsOf(request);
    try {
      const id = values.step?.startsWith("lot-") ? values.step : nextLot;
      const method = methods[settings.now.method].screensLots ? settings.now.method : firstMethod;
      const lot = { ...openedLot(values, library(), ownMark(request)), method };
      await bench.station.do({ do: "open-lot", subject: id, seen: 0, lot });
      if (id === nextLot) nextLot = `lot-${randomUUID()}`;
      return reply.redirect(`/lots/${id}`, 303);
    } catch (error) {
      const refused = refusalOf(error);
      const { says, field = "name" } = refused;
      return list(request, reply, { values, problems: [{ fieldId: field, error: says }] });
    }
  });

  const second = () => settings.now.secondUnit;
  const prints = {
    ...{ station: bench.station, ledger, folder: reports, demo },
    zone: () => timeZoneOf(settings.now),
  };
  const closed = (id: string, locale: Locale) => printSettlement(id, locale, prints);
  screeningRoutes(app, { bench, ledger, lots: book, claims, demo, library, second, closed });
  printRoutes(app, prints);
  settlementRoutes(app, {
    ...{ station: bench.station, ledger, lots: book, demo, library, priceLocked },
    zone: () => timeZoneOf(settings.now),
    now: () => new Date(),
  });
}

function openedLot(values: Record<string, string>, library: Library, mark: DecimalMark) {
  const { name = "", from = "", gross = "", grossUnit = "g", count = "", claim = "" } = values;
  if (name.trim() === "") throw new Refusal("lot.name-missing", {}, "name");
  if (count.trim() !== "" && !/^[1-9]\d{0,4}$/.test(count.trim()))
    throw new Refusal("lot.count-not-whole", { count: count.trim() }, "count");
  if (!["", nothingClaimed].includes(claim) && !library.has(claim))
    throw new Refusal("claim.unknown", { claim }, "claim");
  const weighed = gross.trim() === "" ? undefined : typedReading(gross, grossUnit, { mark, at: "gross" });
  return {
    name: name.trim(),
    ...(from.trim() === "" ? {} : { from: from.trim() }),
    ...(weighed ? { gross: { ...weighed, grams: toGrams(weighed.text, weighed.unit) } } : {}),
    ...(count.trim() === "" ? {} : { count: Number(count) }),
    ...(claim === nothingClaimed ? { nothingClaimed: true as const } : claim === "" ? {} : { claim }),
  };
}
