import { useTell } from "../messages/spoken.ts";
import { Photos, type PhotoView } from "../photos.tsx";
import { DensityAxis } from "../plots/density.tsx";
import type { MeasuredCurve } from "../plots/density-plot.ts";
import { Facts, Rows, Sheet } from "../sheet.tsx";
import { BehindIt } from "./behind-it.tsx";
import type { Report } from "./report.ts";
import { factsOf, List, Stated } from "./stated.tsx";

export interface ReportView {
  report: Report;
  /** pictures of the item */
  photos: readonly PhotoView[];
  /** the recorded interval as a distribution */
  measured: MeasuredCurve;
  recordHref: string;
  pdfHref: string;
}

/** A report to print: the result first, what it rests on after it. Draws what the report states and adds nothing. */
export function ReportPage({ report, photos, measured, recordHref, pdfHref }: ReportView) {
  const t = useTell();
  return (
    <>
      <p class="not-printed row">
        <a href={pdfHref}>{t("report.as-pdf")}</a>
        <a href={recordHref}>{t("report.behind")}</a>
        <span class="hint">{t("report.to-print")}</span>
      </p>
      <p>
        <strong>{t("report.number-and-copy", { number: report.number, copy: report.copy })}</strong>
      </p>
      <Standing {...report} />
      <div class="columns">
        <Sheet id="issued" title={t("report.headings.issued")}>
          <Facts
            facts={[
              ...factsOf(report.organisation),
              [t("report.customer"), report.customer],
              ...factsOf(report.dates),
            ]}
          />
        </Sheet>
        <Sheet id="item" title={t("report.headings.item")}>
          <Facts facts={factsOf(report.item)} />
          <Photos photos={photos} />
        </Sheet>
      </div>
      <Results {...report} measured={measured} />
      <Opinion {...report} />
      <div class="overleaf">
        <BehindIt {...report} />
      </div>
    </>
  );
}

function Standing({ voided, replaces }: Report) {
  const t = useTell();
  return (
    <>
      {voided !== null && (
        <p class="problems">
          <strong>
            {t("report.voided")}: {t("report.voided-because", { reason: voided })}
          </strong>
        </p>
      )}
      {replaces && (
        <p>
          <strong>
            {replaces.number === null
              ? t("report.amended-record")
              : t("report.amends", { number: replaces.number })}
          </strong>{" "}
          {t("report.reason", { reason: replaces.reason, by: replaces.by, at: replaces.at })}
        </p>
      )}
    </>
  );
}

function Results({
  results,
  uncertaintyStatement,
  plot,
  opinion,
  measured,
}: Report & Pick<ReportView, "measured">) {
  const t = useTell();
  const bands = opinion.notExcluded.flatMap(({ id, name, band }) =>
    band ? [{ id, name, low: band[0], high: band[1], notExcluded: true }] : [],
  );
  return (
    <Sheet id="results" title={t("report.headings.results")}>
      <Rows
        caption={t("report.results.caption")}
        empty={t("report.results.empty")}
        columns={[
          { head: t("report.results.head.quantity") },
          { head: t("report.results.head.value"), number: true },
          { head: t("report.results.head.unit") },
          { head: t("report.results.head.uncertainty") },
        ]}
        rows={results.map(({ quantity, value, unit, uncertainty }) => ({
          key: quantity,
          cells: [quantity, value, unit, uncertainty ?? "–"],
        }))}
      />
      <p>{uncertaintyStatement}</p>
      <DensityAxis
        id="density"
        measured={measured}
        bands={bands}
        {...(plot.claim === null ? {} : { claimId: plot.claim })}
      />
    </Sheet>
  );
}

function Opinion({
  opinion,
  decision,
  otherTests,
  customerSupplied,
  cautions,
  statements,
  authorisedBy,
  onlyEnglish,
}: Report) {
  const t = useTell();
  return (
    <>
      <Sheet id="opinion" title={t("report.headings.opinion")}>
        <p>
          {opinion.state} <Stated says={opinion.because} onlyEnglish={onlyEnglish} />
        </p>
        {opinion.notExcluded.length > 0 && (
          <p>
            {t("report.opinion.not-excluded", {
              names: opinion.notExcluded.map(({ name }) => name).join(", "),
            })}
          </p>
        )}
        {opinion.purposeMade !== null && <p>{opinion.purposeMade}</p>}
        <List items={decision} />
        {otherTests.length > 0 && (
          <>
            <h3>{t("report.headings.other-tests")}</h3>
            <List items={otherTests} />
          </>
        )}
      </Sheet>
      {customerSupplied.length > 0 && (
        <Sheet id="supplied" title={t("report.headings.supplied")}>
          <Facts facts={factsOf(customerSupplied)} />
        </Sheet>
      )}
      <Sheet id="cautions" title={t("report.headings.cautions")}>
        <List items={[...cautions, ...statements]} />
        {authorisedBy !== null && <p>{t("report.authorised", { by: authorisedBy })}</p>}
      </Sheet>
    </>
  );
}
