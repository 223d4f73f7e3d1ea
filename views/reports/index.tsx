import { useTell } from "../messages/spoken.ts";
import { Photos, type PhotoView } from "../photos.tsx";
import { DensityAxis } from "../plots/density.tsx";
import type { MeasuredCurve } from "../plots/density-plot.ts";
import { Caution, Facts, Rows, Sheet } from "../sheet.tsx";
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
      <Demonstration {...report} />
      <Standing {...report} />
      <Headline {...report} measured={measured} />
      <Sheet id="item" title={t("report.headings.item")}>
        <Facts
          facts={[...factsOf(report.item), [t("report.customer"), report.customer], ...factsOf(report.dates)]}
        />
        <Photos photos={photos} />
      </Sheet>
      <Results {...report} />
      <Opinion {...report} />
      <ul class="signatures">
        {report.signatures.map((label) => (
          <li key={label}>{label}</li>
        ))}
      </ul>
      <div class="overleaf">
        <Demonstration {...report} />
        <BehindIt {...report} />
      </div>
    </>
  );
}

/** Said at the head of each page: nothing of it was weighed. */
function Demonstration({ demonstration }: Report) {
  const t = useTell();
  return demonstration ? (
    <p class="quiet-notice">
      <strong>{t("report.demonstration")}</strong>
    </p>
  ) : null;
}

function Headline({ headline, opinion, plot, measured, onlyEnglish }: Report & Pick<ReportView, "measured">) {
  const bands = opinion.notExcluded.flatMap(({ id, name, band }) =>
    band ? [{ id, name, low: band[0], high: band[1], notExcluded: true }] : [],
  );
  return (
    <>
      <p class="headline">
        <strong>
          <Stated message={headline.answer} onlyEnglish={onlyEnglish} />
        </strong>
      </p>
      <p>
        <span class="result-value">{headline.density}</span> {headline.of}
      </p>
      <DensityAxis
        id="density"
        measured={measured}
        bands={bands}
        {...(plot.claim === null ? {} : { claimId: plot.claim })}
      />
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

function Results({ results }: Report) {
  const t = useTell();
  return (
    <Sheet id="results" title={t("report.headings.results")}>
      <Rows
        caption={t("report.results.caption")}
        empty={t("report.results.empty")}
        columns={[
          { head: t("report.results.head.quantity") },
          { head: t("report.results.head.value"), number: true },
          { head: t("report.results.head.unit") },
          { head: t("report.results.head.uncertainty"), number: true },
        ]}
        rows={results.map(({ quantity, value, unit, uncertainty }) => ({
          key: quantity,
          cells: [quantity, value, unit, uncertainty ?? "–"],
        }))}
      />
    </Sheet>
  );
}

function Opinion({ opinion, laboratory, cautions }: Report) {
  const t = useTell();
  const others = opinion.notExcluded.filter(({ occurrence }) => occurrence !== "");
  return (
    <>
      <Sheet id="opinion" title={t("report.headings.opinion")}>
        <p>{opinion.state}</p>
        {others.length > 0 && (
          <Rows
            caption={t("report.left.caption")}
            empty=""
            columns={[{ head: t("report.left.head.name") }, { head: t("report.left.head.met") }]}
            rows={others.map(({ id, name, occurrence }) => ({ key: id, cells: [name, occurrence] }))}
          />
        )}
        {opinion.purposeMade !== null && <p>{opinion.purposeMade}</p>}
        {opinion.fineness.length > 0 && <p>{opinion.fineness.join(" ")}</p>}
        {opinion.hazards.length > 0 && (
          <Caution title={t("hazard.title")}>
            <List items={opinion.hazards} />
          </Caution>
        )}
        <p class="hint">{cautions[0]}</p>
      </Sheet>
      {laboratory.length > 0 && (
        <Sheet id="laboratory" title={t("report.headings.laboratory")}>
          <List items={laboratory} />
        </Sheet>
      )}
    </>
  );
}
