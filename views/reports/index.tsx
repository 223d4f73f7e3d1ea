import { recordedDensity } from "../../server/conformity/recorded-density.ts";
import { photoName } from "../../server/photos/photo-name.ts";
import type { Report, ReportPhoto } from "../../server/reports/report.ts";
import { Photos } from "../photos.tsx";
import { curveOf } from "../plots/curve.ts";
import { DensityAxis } from "../plots/density.tsx";
import { Facts, Rows, Sheet } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";
import { BehindIt } from "./behind-it.tsx";
import { factsOf, List, Stated } from "./stated.tsx";

export interface ReportView {
  report: Report;
  recordHref: string;
  pdfHref: string;
}

/** A report to print: the result first, what it rests on after it. Draws what the report states and adds nothing. */
export function ReportPage({ report, recordHref, pdfHref }: ReportView) {
  const say = useWords().report;
  const ticket = report.item.find(({ label }) => label === say.item.ticket)?.value ?? say.item.theItem;
  return (
    <>
      <p class="not-printed row">
        <a href={pdfHref}>{say.asPdf}</a>
        <a href={recordHref}>{say.behind}</a>
        <span class="hint">{say.toPrint}</span>
      </p>
      <p>
        <strong>{say.numberAndCopy(report.number, report.copy)}</strong>
      </p>
      <Standing {...report} />
      <div class="columns">
        <Sheet id="issued" title={say.headings.issued}>
          <Facts
            facts={[...factsOf(report.house), [say.customer, report.customer], ...factsOf(report.dates)]}
          />
        </Sheet>
        <Sheet id="item" title={say.headings.item}>
          <Facts facts={factsOf(report.item)} />
          <Photos photos={report.photos.map((photo) => photoViewOf(photo, ticket))} />
        </Sheet>
      </div>
      <Results {...report} />
      <Opinion {...report} />
      <div class="overleaf">
        <BehindIt {...report} />
      </div>
    </>
  );
}

function photoViewOf({ at, shows, width, height, ...photo }: ReportPhoto, ticket: string) {
  return { src: `/photos/${photoName(photo)}`, ticket, shows, when: at, width, height };
}

function Standing({ voided, replaces }: Report) {
  const say = useWords().report;
  return (
    <>
      {voided !== null && (
        <p class="problems">
          <strong>
            {say.voided}: {say.voidedBecause(voided)}
          </strong>
        </p>
      )}
      {replaces && (
        <p>
          <strong>{replaces.number === null ? say.amendedRecord : say.amends(replaces.number)}</strong>{" "}
          {say.reason(replaces.reason, replaces.by, replaces.at)}
        </p>
      )}
    </>
  );
}

function Results({ results, uncertaintyStatement, plot, opinion }: Report) {
  const { headings, results: say } = useWords().report;
  const bands = opinion.alive.flatMap(({ id, name, band }) =>
    band ? [{ id, name, low: band[0], high: band[1], alive: true }] : [],
  );
  return (
    <Sheet id="results" title={headings.results}>
      <Rows
        caption={say.caption}
        empty={say.empty}
        columns={[
          { head: say.head.quantity },
          { head: say.head.value, number: true },
          { head: say.head.unit },
          { head: say.head.uncertainty },
        ]}
        rows={results.map(({ quantity, value, unit, uncertainty }) => ({
          key: quantity,
          cells: [quantity, value, unit, uncertainty ?? "–"],
        }))}
      />
      <p>{uncertaintyStatement}</p>
      <DensityAxis
        id="density"
        measured={measuredOf(plot)}
        bands={bands}
        {...(plot.claim === null ? {} : { claimId: plot.claim })}
      />
    </Sheet>
  );
}

/** The recorded interval as a curve; the report keeps no more of the distribution. */
function measuredOf({ value, low, high, confidence }: Report["plot"]) {
  const u = (high - low) / 4;
  const { probabilityBelow } = recordedDensity(
    { density_g_cm3: value, u_g_cm3: u, interval_g_cm3: [low, high], interval_from: "gum" },
    confidence,
  );
  const curve = curveOf(probabilityBelow, value - 4 * u, value + 4 * u);
  return { value, u, interval: [low, high] as const, confidence, curve };
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
  const { headings, ...say } = useWords().report;
  return (
    <>
      <Sheet id="opinion" title={headings.opinion}>
        <p>
          {opinion.state} <Stated says={opinion.because} onlyEnglish={onlyEnglish} />
        </p>
        {opinion.alive.length > 0 && (
          <p>{say.opinion.alive(opinion.alive.map(({ name }) => name).join(", "))}</p>
        )}
        <List items={decision} />
        {otherTests.length > 0 && (
          <>
            <h3>{headings.otherTests}</h3>
            <List items={otherTests} />
          </>
        )}
      </Sheet>
      {customerSupplied.length > 0 && (
        <Sheet id="supplied" title={headings.supplied}>
          <Facts facts={factsOf(customerSupplied)} />
        </Sheet>
      )}
      <Sheet id="cautions" title={headings.cautions}>
        <List items={[...cautions, ...statements]} />
        {authorisedBy !== null && <p>{say.authorised(authorisedBy)}</p>}
      </Sheet>
    </>
  );
}
