import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { page } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import { ReportPage } from "../../../views/reports/index.tsx";
import { locales, words } from "../../../views/words/index.ts";
import type { EntryOf } from "../../ledger/entry.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { LedgerTrouble } from "../../ledger/trouble.ts";
import type { Library } from "../../metals/library.ts";
import { issueReport, reportAsIssued } from "../../reports/issue.ts";
import { reportPdf } from "../../reports/pdf.ts";
import type { House, Report } from "../../reports/report.ts";
import { languageOf } from "../../reports/writing.ts";
import { benchSettingsShape } from "../../station/bench-settings.ts";
import { statedOf } from "../evidence/evidence.tsx";
import { frameOf, lookOf } from "../look.ts";
import { fieldsOf, html } from "../page-request.ts";
import { noRecord } from "../records/no-record.tsx";

interface ReportRouteParts {
  ledger: Ledger;
  demo: boolean;
  library: () => Library;
}

type PieceRequest = FastifyRequest<{ Params: { piece: string } }>;

/** Reports of a record: issued once with a number of their own, then shown and printed as they were issued. */
export function reportRoutes(app: FastifyInstance, { ledger, demo, library }: ReportRouteParts): void {
  const refusal = (request: FastifyRequest, reply: FastifyReply, says: string, status: number) =>
    html(
      reply,
      page({
        ...frameOf(request, reply, { path: "/records", demo }),
        title: words(lookOf(request).locale).frame.notDone,
        main: <Problem says={says} />,
      }),
      status,
    );

  app.post<{ Params: { piece: string } }>(
    "/records/:piece/reports",
    { preHandler: app.csrfProtection },
    async (request: PieceRequest, reply) => {
      const { piece } = request.params;
      const { step, by = "", language } = fieldsOf(request);
      if (!statedOf(await ledger.entriesOf(piece))) return refusal(request, reply, noRecord(piece), 404);
      try {
        const { number, copy } = await issueReport(ledger, piece, {
          library: library(),
          locale: locales.find((locale) => locale === language) ?? lookOf(request).locale,
          ...(step ? { key: step } : {}),
          ...(by.trim() ? { by: by.trim() } : {}),
        });
        return reply.redirect(`/records/${encodeURIComponent(piece)}/reports/${number}?copy=${copy}`, 303);
      } catch (error) {
        if (!(error instanceof LedgerTrouble)) throw error;
        return refusal(request, reply, error.message, 422);
      }
    },
  );

  app.get<{ Params: { piece: string; number: string }; Querystring: { copy?: string } }>(
    "/records/:piece/reports/:number",
    async (request, reply) => {
      const { piece } = request.params;
      const asPdf = request.params.number.endsWith(".pdf");
      const number = request.params.number.replace(/\.pdf$/, "");
      const report = await issuedReport(ledger, library(), piece, number, request.query.copy);
      if (!report)
        return refusal(
          request,
          reply,
          `No report ${number} was issued for this record. Issue one on the page of the record.`,
          404,
        );
      if (asPdf)
        return reply
          .type("application/pdf")
          .header("content-disposition", `inline; filename="${number}-copy-${report.copy}.pdf"`)
          .send(await reportPdf(report));
      const href = `/records/${encodeURIComponent(piece)}`;
      const pdfHref = `${href}/reports/${number}.pdf?copy=${report.copy}`;
      return html(
        reply,
        page({
          ...frameOf(request, reply, { path: "/records", demo }),
          title: report.title,
          mainLocale: report.locale,
          main: <ReportPage report={report} recordHref={href} pdfHref={pdfHref} />,
        }),
      );
    },
  );
}

/** The report of this number and copy, the last copy when none is named; undefined when there is none. */
async function issuedReport(
  ledger: Ledger,
  library: Library,
  piece: string,
  number: string,
  copy: string | undefined,
): Promise<Report | undefined> {
  const issued = (await ledger.entriesOf(piece)).findLast(
    (entry) =>
      entry.kind === "report-issued" &&
      entry.body.number === number &&
      (copy === undefined || `${entry.body.copy}` === copy),
  );
  if (issued?.kind !== "report-issued") return undefined;
  return reportAsIssued(ledger, issued, { house: await houseAt(ledger, issued), library });
}

/** The house as the settings named it when the report was issued. */
async function houseAt(ledger: Ledger, { seq, body }: EntryOf<"report-issued">): Promise<House> {
  const { sealUntil } = words(languageOf(body.language)).report.house;
  const [kept] = await ledger.entries({ kind: "settings", before: seq, newestFirst: true, limit: 1 });
  const settings = kept?.kind === "settings" ? benchSettingsShape.safeParse(kept.body.settings) : undefined;
  if (!settings?.success) return {};
  const { name, address, contact, verifiedScale, verifiedUntil, accreditedBy, accreditation } =
    settings.data.house;
  const seal = verifiedUntil === "" ? verifiedScale : sealUntil(verifiedScale, verifiedUntil);
  return {
    ...(name === "" ? {} : { name }),
    ...(address === "" ? {} : { address }),
    ...(contact === "" ? {} : { contact }),
    ...(verifiedScale === "" ? {} : { verifiedScale: seal }),
    ...(accreditedBy === "" || accreditation === ""
      ? {}
      : { accreditation: { body: accreditedBy, number: accreditation } }),
  };
}
