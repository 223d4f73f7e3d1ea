import { useTell } from "../messages/spoken.ts";
import { Facts, Rows, Sheet } from "../sheet.tsx";
import { QrCode } from "./qr.tsx";
import type { BudgetLine, Report } from "./report.ts";
import { factsOf, List, Stated } from "./stated.tsx";

/** What the result rests on: method, conditions, readings, budget, and the record to check it by. */
export function BehindIt({
  method,
  corrections,
  sampling,
  deviations,
  warnings,
  conditions,
  readings,
  budget,
  record,
  onlyEnglish,
  ...report
}: Report) {
  const t = useTell();
  const notes = [...deviations, ...warnings];
  return (
    <>
      <Sheet id="issued" title={t("report.headings.issued")}>
        <Facts facts={factsOf(report.organisation)} />
        <p>{report.uncertaintyStatement}</p>
        <List items={report.decision} />
      </Sheet>
      {report.otherTests.length > 0 && (
        <Sheet id="other-tests" title={t("report.headings.other-tests")}>
          <List items={report.otherTests} />
        </Sheet>
      )}
      {report.customerSupplied.length > 0 && (
        <Sheet id="supplied" title={t("report.headings.supplied")}>
          <Facts facts={factsOf(report.customerSupplied)} />
        </Sheet>
      )}
      <Sheet id="method" title={t("report.headings.method")}>
        <p>{method}</p>
        <p>{t("report.corrected-for", { what: corrections.join("; "), sampling })}</p>
        <p>{t(notes.length === 0 ? "report.deviations.none" : "report.deviations.some")}</p>
        <List items={notes} onlyEnglish={onlyEnglish} />
      </Sheet>
      {report.attempts.length > 0 && (
        <Sheet id="attempts" title={t("report.headings.attempts")}>
          <List items={report.attempts} />
        </Sheet>
      )}
      {report.amendments.length > 0 && (
        <Sheet id="amendments" title={t("report.headings.amendments")}>
          <List items={report.amendments} />
        </Sheet>
      )}
      <Sheet id="conditions" title={t("report.headings.conditions")}>
        <Facts facts={factsOf(conditions)} />
      </Sheet>
      <Sheet id="readings" title={t("report.headings.readings")}>
        <Readings readings={readings} onlyEnglish={onlyEnglish} />
      </Sheet>
      <Sheet id="budget" title={t("report.headings.budget")}>
        <Budget lines={budget} />
      </Sheet>
      <Sheet id="cautions" title={t("report.headings.cautions")}>
        <List items={[...report.cautions.slice(1), ...report.statements]} />
        {report.authorisedBy !== null && <p>{t("report.authorised", { by: report.authorisedBy })}</p>}
      </Sheet>
      <Sheet id="record" title={t("report.headings.record")}>
        <QrCode command={`underhook record ${record.hash}`} />
        <Facts
          facts={[
            [
              t("report.record.record"),
              t("report.record.place", { subject: record.subject, row: record.row }),
            ],
            [t("report.record.hash"), <code key="h">{record.hash}</code>],
            [t("report.record.signed-by"), record.keyId],
            [t("report.record.to-check"), record.checkHow],
            ...factsOf(record.versions),
          ]}
        />
        <p>{t("report.record.end")}</p>
      </Sheet>
    </>
  );
}

function Readings({ readings, onlyEnglish }: Pick<Report, "readings" | "onlyEnglish">) {
  const t = useTell();
  return (
    <Rows
      caption={t("report.readings.caption")}
      empty={t("report.readings.empty")}
      columns={[
        { head: t("report.readings.head.what") },
        { head: t("report.readings.head.shown"), number: true },
        { head: t("report.readings.head.at") },
        { head: t("report.readings.head.from") },
        { head: t("report.readings.head.because") },
      ]}
      rows={readings.map(({ what, shown, at, source, because, voided }) => ({
        key: `${at} ${what}`,
        voided: voided !== null,
        cells: [
          what,
          voided === null ? shown : `${shown} ${t("report.readings.void")}`,
          at,
          source,
          voided === null ? (
            <Stated key="b" message={because} onlyEnglish={onlyEnglish} />
          ) : (
            `${t("report.readings.void")}: ${voided}`
          ),
        ],
      }))}
    />
  );
}

function Budget({ lines }: { lines: readonly BudgetLine[] }) {
  const t = useTell();
  return (
    <Rows
      caption={t("report.budget.caption")}
      empty={t("report.budget.empty")}
      columns={[
        { head: t("report.budget.head.input") },
        { head: t("report.budget.head.value"), number: true },
        { head: t("report.budget.head.u"), number: true },
        { head: t("report.budget.head.unit") },
        { head: t("report.budget.head.sensitivity"), number: true },
        { head: t("report.budget.head.part"), number: true },
        { head: t("report.budget.head.share"), number: true },
      ]}
      rows={lines.map(({ input, value, u, unit, sensitivity, contribution, share }) => ({
        key: input,
        cells: [input, value, u, unit, sensitivity, contribution, share],
      }))}
    />
  );
}
