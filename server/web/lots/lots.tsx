import { randomUUID } from "node:crypto";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { massUnits, toGrams } from "../../../calibration/units.ts";
import { LotsIndex, type LotsPage } from "../../../views/lots/index.tsx";
import { nothingClaimed } from "../../../views/lots/view.ts";
import type { Locale } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { omitUndefined } from "../../compute/omit-undefined.ts";
import type { BodyOf } from "../../ledger/kinds.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { LotRepository } from "../../lots/lot-repository.ts";
import type { Library } from "../../metals/library.ts";
import { firstMethod, methods } from "../../methods/index.ts";
import { settlementOf } from "../../settlements/evolve.ts";
import { currentPrices } from "../../settlements/settlement.ts";
import type { Bench } from "../../station/bench.ts";
import type { SettingsRepository } from "../../station/settings-repository.ts";
import { type Form, postedForm, refuse } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { claimOptions } from "../metals/claim-options.ts";
import { asTyped, html } from "../page-request.ts";
import { problemsOf } from "../refused.ts";
import { printRoutes, printSettlement } from "../settlements/prints.ts";
import { settlementRoutes } from "../settlements/settlement.tsx";
import type { Manner } from "../when.ts";
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
  const repository = new LotRepository(ledger);
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
    const lots = await repository.newest(lotsShown);
    const view: LotsPage = {
      lots: lots.map(({ lot, entries, pieces }) => {
        const priced = currentPrices(settlementOf(entries)).map(({ metal }) => metal);
        return lotRow({ lot, pieces, priced }, around);
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
    const read = postedForm(request, openingForm(library()));
    if ("problems" in read)
      return list(request, reply, { values: asTyped(request), problems: read.problems });
    const { step, lot } = read.values;
    const id = step.startsWith("lot-") ? step : nextLot;
    const method = methods[settings.now.method].screensLots ? settings.now.method : firstMethod;
    try {
      await bench.station.do({ do: "open-lot", subject: id, seen: 0, lot: { ...lot, method } });
    } catch (error) {
      return list(request, reply, {
        values: asTyped(request),
        problems: problemsOf(error, "name"),
      });
    }
    if (id === nextLot) nextLot = `lot-${randomUUID()}`;
    return reply.redirect(`/lots/${id}`, 303);
  });

  const second = () => settings.now.secondUnit;
  const prints = {
    ...{ station: bench.station, ledger, folder: reports, demo },
  };
  const closed = (id: string, manner: Manner) => printSettlement(id, manner, prints);
  screeningRoutes(app, { bench, ledger, lots: repository, claims, demo, library, second, closed });
  printRoutes(app, prints);
  settlementRoutes(app, {
    ...{ station: bench.station, ledger, lots: repository, demo, library, priceLocked },
    currency: () => settings.now.place.currency,
    now: () => new Date(),
  });
}

/** A lot as it is taken in. A count and a gross mass may be unknown; what it is claimed as may be left open. */
const openingForm =
  (library: Library): Form<{ step: string; lot: Omit<BodyOf<"lot-opened">, "method"> }> =>
  ({ text, typed, choice, maybeText, maybeReading }, sent) =>
    z
      .object({
        name: text({ missing: message("lot.name-missing") }),
        from: maybeText(),
        gross: maybeReading(sent.grossUnit ?? "g"),
        count: typed().superRefine((count, context) => {
          if (!/^([1-9]\d{0,4})?$/.test(count)) refuse(context, message("lot.count-not-whole", { count }));
        }),
        claim: choice(["", nothingClaimed, ...library.metals.map(({ id }) => id)], {
          first: "",
          wrong: (claim) => message("claim.unknown", { claim }),
        }),
        step: typed(),
      })
      .transform(({ name, from, gross, count, claim, step }) => ({
        step,
        lot: omitUndefined({
          name,
          from,
          gross: gross && { ...gross, grams: toGrams(gross.text, gross.unit) },
          count: count === "" ? undefined : Number(count),
          nothingClaimed: claim === nothingClaimed ? (true as const) : undefined,
          claim: claim === nothingClaimed || claim === "" ? undefined : claim,
        }),
      }));
