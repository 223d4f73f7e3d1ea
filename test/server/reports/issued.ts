import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Ledger } from "../../../server/ledger/ledger.ts";
import { type IssueOptions, issueReport, reportAsIssued } from "../../../server/reports/issue.ts";
import { reportPdf } from "../../../server/reports/pdf.ts";
import { keepPrint } from "../../../server/reports/report-folder.ts";
import type { Report } from "../../../views/reports/report.ts";

/** Issues a report with its PDF in a folder of its own, and gives what it states. */
export async function issued(
  ledger: Ledger,
  subject: string,
  options: Omit<IssueOptions, "print" | "program" | "now"> = {},
): Promise<Report> {
  const folder = mkdtempSync(join(tmpdir(), "underhook-reports-"));
  const entry = await issueReport(ledger, subject, {
    ...options,
    program: "test",
    now: () => new Date(),
    print: async (report) => keepPrint(folder, { pdf: await reportPdf(report), page: report.title }),
  });
  return reportAsIssued(ledger, entry, options);
}
