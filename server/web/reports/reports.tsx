import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { type Locale, locales } from "../../../views/messages/language.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page, render } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import { ReportPage } from "../../../views/reports/index.tsx";
import type { Report } from "../../../views/reports/report.ts";
import type { Sentence } from "../../../views/sentence.tsx";
import { omitUndefined } from "../../compute/omit-undefined.ts";
import type { EntryOf } from "../../ledger/entry.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import type { Library } from "../../metals/library.ts";
import { issueReport, reportAsIssued } from "../../reports/issue.ts";
import { printedPdf } from "../../reports/print-thread.ts";
import { keepPrint, type Printed, printOf } from "../../reports/report-folder.ts";
import { languageOf } from "../../reports/writing.ts";
import { programVersion } from "../../version.ts";
import { statedOf } from "../evidence/evidence.tsx";
import { type Entries, formIn } from "../forms/form.ts";
import { frameOf, lookOf } from "../look.ts";
import { html } from "../page-request.ts";
import { noRecord } from "../records/no-record.tsx";
import { refusalOf } from "../refused.ts";
import { organisationAt } from "./organisation-at.ts";
import { reportView } from "./report-view.ts";

interface ReportRouteParts {
  ledger: Ledger;
  /** where printed reports lie, beside the ledger */
  folder: string;
  demo: boolean;
  library: () => Library;
}

/** Who authorises a report, and in which language; `step` keeps a click sent twice from issuing two. */
const issueForm =
  (own: Locale) =>
  ({ maybeText, choice }: Entries) =>
    z.object({ step: maybeText(), by: maybeText(), language: choice(locales, { first: own }) });

type ItemRequest = FastifyRequest<{ Params: { piece: string } }>;

/** Reports of a record: issued once with a number of their own, then shown and printed as they were issued. */
export function reportRoutes(
  app: FastifyInstance,
  { ledger, folder, demo, library }: ReportRouteParts,
): void {
  const refusal = (request: FastifyRequest, reply: FastifyReply, sentence: Sentence, status: number) =>
    html(
      reply,
      page({
        ...frameOf(request, reply, { path: "/records", demo }),
        title: tellerOf(lookOf(request).locale)("frame.not-done"),
        main: <Problem message={sentence} />,
      }),
      status,
    );

  app.post<{ Params: { piece: string } }>(
    "/records/:piece/reports",
    { preHandler: app.csrfProtection },
    async (request: ItemRequest, reply) => {
      const { piece } = request.params;
      const { step, by, language: locale } = formIn(request, issueForm(lookOf(request).locale));
      if (!statedOf(await ledger.entriesOf(piece))) return refusal(request, reply, noRecord(piece), 404);
      try {
        const { body } = await issueReport(ledger, piece, {
          library: library(),
          organisation: await organisationAt(ledger, Number.MAX_SAFE_INTEGER, locale),
          locale,
          zone: app.zone(),
          program: programVersion,
          now: () => new Date(),
          print: async (report) => keepPrint(folder, await printed(report)),
          ...omitUndefined({ key: step, by }),
        });
        return reply.redirect(
          `/records/${encodeURIComponent(piece)}/reports/${body.number}?copy=${body.copy}`,
          303,
        );
      } catch (error) {
        return refusal(request, reply, refusalOf(error).message, 422);
      }
    },
  );

  app.get<{ Params: { piece: string; number: string }; Querystring: { copy?: string } }>(
    "/records/:piece/reports/:number",
    async (request, reply) => {
      const { piece } = request.params;
      const asPdf = request.params.number.endsWith(".pdf");
      const number = request.params.number.replace(/\.pdf$/, "");
      const issued = await issuedReport(ledger, piece, number, request.query.copy);
      if (!issued) return refusal(request, reply, message("report.not-issued", { number }), 404);
      const locale = languageOf(issued.body.language);
      const print = issued.body.print
        ? await printOf(folder, issued.body.print)
        : await printedAgain(ledger, issued, { library: library(), zone: app.zone() });
      if ("fault" in print)
        return refusal(request, reply, message("report.print-missing", { fault: print.fault }), 404);
      if (asPdf)
        return reply
          .type("application/pdf")
          .header("content-disposition", `inline; filename="${number}-copy-${issued.body.copy}.pdf"`)
          .send(print.pdf);
      return html(
        reply,
        page({
          ...frameOf(request, reply, { path: "/records", demo }),
          title: tellerOf(locale)("report.title"),
          mainLocale: locale,
          main: <div dangerouslySetInnerHTML={{ __html: print.page }} />,
        }),
      );
    },
  );
}

/** A report of the time before prints were kept, drawn from its entries. */
async function printedAgain(
  ledger: Ledger,
  issued: EntryOf<"report-issued">,
  { library, zone }: { library: Library; zone: string },
) {
  const organisation = await organisationAt(ledger, issued.seq, languageOf(issued.body.language));
  return printed(await reportAsIssued(ledger, issued, { organisation, library, zone }));
}

/** The report of this number and copy, the last copy when none is named; undefined when there is none. */
async function issuedReport(
  ledger: Ledger,
  piece: string,
  number: string,
  copy: string | undefined,
): Promise<EntryOf<"report-issued"> | undefined> {
  return (await ledger.entriesOf(piece)).findLast(
    (entry): entry is EntryOf<"report-issued"> =>
      entry.kind === "report-issued" &&
      entry.body.number === number &&
      (copy === undefined || `${entry.body.copy}` === copy),
  );
}

/** A report printed now: its PDF, and the main part of its page. */
async function printed(report: Report): Promise<Printed> {
  const href = `/records/${encodeURIComponent(report.record.subject)}`;
  const pdfHref = `${href}/reports/${report.number}.pdf?copy=${report.copy}`;
  return {
    pdf: await printedPdf({ paper: "report", of: report }),
    page: render(<ReportPage {...reportView(report, { recordHref: href, pdfHref })} />, report.locale),
  };
}
