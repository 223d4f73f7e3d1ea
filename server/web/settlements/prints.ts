import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { h } from "preact";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import { type Locale, locales } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import type { Sentence } from "../../../views/sentence.tsx";
import type { Ledger } from "../../ledger/ledger.ts";
import { lotOf } from "../../lots/evolve.ts";
import { printedPdf } from "../../reports/print-thread.ts";
import { keepPdf, pdfOf } from "../../reports/report-folder.ts";
import { settlementOf } from "../../settlements/evolve.ts";
import type { Station } from "../../station/station.ts";
import { programVersion } from "../../version.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { frameOf, lookOf } from "../look.ts";
import { named } from "../names.ts";
import { html } from "../page-request.ts";
import { refusalOf } from "../refused.ts";
import { organisationAt } from "../reports/organisation-at.ts";
import type { Manner } from "../when.ts";

export interface PrintParts {
  station: Station;
  ledger: Ledger;
  /** where printed papers lie, beside the ledger */
  folder: string;
  demo: boolean;
}

/** Prints what a lot was closed with last, keeps the PDF and writes its SHA-256. Does nothing where nothing was settled. */
export async function printSettlement(
  id: string,
  { locale, zone }: Manner,
  { station, ledger, folder, demo }: PrintParts,
): Promise<void> {
  const entries = named(ledger, await ledger.entriesOf(id), locale);
  const lot = lotOf(entries);
  const closing = lot?.closings.at(-1);
  if (!lot || !closing) throw new Refusal("lot.none");
  const hash = entries.find((entry) => entry.id === closing.entry)?.hash ?? "";
  if (!closing.settlement) return;
  const of = {
    ...{ lot, closing, hash, locale, demo, zone },
    prices: Object.values(settlementOf(entries).prices).flat(),
    organisation: await organisationAt(ledger, Number.MAX_SAFE_INTEGER, locale),
  };
  const pdf = await printedPdf({ paper: "settlement", of });
  const print = {
    closing: closing.entry,
    language: locale,
    pdf: await keepPdf(folder, pdf),
    program: programVersion,
  };
  await station.do({ do: "keep-print", subject: id, seen: "now", print });
}

/** The papers of a closed lot. */
const languageForm =
  (own: Locale) =>
  ({ choice }: Entries) =>
    z.object({ language: choice(locales, { first: own }) });

export function printRoutes(app: FastifyInstance, parts: PrintParts): void {
  const { ledger, folder, demo } = parts;
  const refusal = (request: FastifyRequest, reply: FastifyReply, sentence: Sentence, status: number) => {
    const frame = frameOf(request, reply, { path: "/lots", demo });
    const title = tellerOf(frame.locale)("frame.not-done");
    return html(reply, page({ ...frame, title, main: h(Problem, { message: sentence }) }), status);
  };

  app.post<{ Params: { lot: string } }>(
    "/lots/:lot/prints",
    { preHandler: app.csrfProtection },
    async (request, reply) => {
      const { lot } = request.params;
      try {
        const { language: locale } = formIn(request, languageForm(lookOf(request).locale));
        await printSettlement(lot, { locale, zone: app.zone() }, parts);
        return reply.redirect(`/lots/${lot}/payout`, 303);
      } catch (error) {
        return refusal(request, reply, refusalOf(error).message, 422);
      }
    },
  );

  app.get<{ Params: { lot: string; print: string } }>("/lots/:lot/prints/:print", async (request, reply) => {
    const { lot, print } = request.params;
    const entry = await ledger.entry(print);
    if (entry?.kind !== "settlement-printed" || entry.subject !== lot)
      return refusal(request, reply, message("lot.none"), 404);
    const pdf = await pdfOf(folder, entry.body.pdf);
    if ("fault" in pdf)
      return refusal(request, reply, message("report.print-missing", { fault: pdf.fault }), 404);
    return reply
      .type("application/pdf")
      .header("content-disposition", `inline; filename="settlement-${entry.body.language}.pdf"`)
      .send(pdf);
  });
}
