import type { ComponentChildren } from "preact";
import { recordedDensity } from "../../server/findings/recorded-density.ts";
import { photoName } from "../../server/photos/photo-name.ts";
import type { BudgetLine, Line, Report, ReportPhoto } from "../../server/reports/report.ts";
import { Photos } from "../photos.tsx";
import { curveOf } from "../plots/curve.ts";
import { DensityAxis } from "../plots/density.tsx";
import { Facts, Rows, Sheet } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";
import { QrCode } from "./qr.tsx";

export interface ReportView {
  report: Report;
  recordHref: string;
  pdfHref: string;
}

const factsOf = (lines: readonly Line[]) => lines.map(({ label, value }) => [label, value] as const);

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

/** A sentence as the report states it; one that its language does not have is marked as English. */
function Stated({ says, onlyEnglish }: { says: string } & Pick<Report, "onlyEnglish">): ComponentChildren {
  return onlyEnglish.includes(says) ? <span lang="en">{says}</span> : says;
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

function BehindIt({
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
}: Report) {
  const { headings, ...say } = useWords().report;
  const notes = [...deviations, ...warnings];
  return (
    <>
      <Sheet id="method" title={headings.method}>
        <p>{method}</p>
        <p>{say.correctedFor(corrections.join("; "), sampling)}</p>
        <p>{notes.length === 0 ? say.deviations.none : say.deviations.some}</p>
        <List items={notes} onlyEnglish={onlyEnglish} />
      </Sheet>
      <Sheet id="conditions" title={headings.conditions}>
        <Facts facts={factsOf(conditions)} />
      </Sheet>
      <Sheet id="readings" title={headings.readings}>
        <Readings readings={readings} onlyEnglish={onlyEnglish} />
      </Sheet>
      <Sheet id="budget" title={headings.budget}>
        <Budget lines={budget} />
      </Sheet>
      <Sheet id="record" title={headings.record}>
        <QrCode text={`underhook record ${record.hash}`} />
        <Facts
          facts={[
            [say.record.record, say.record.place(record.subject, record.row)],
            [say.record.hash, <code key="h">{record.hash}</code>],
            [say.record.signedBy, record.keyId],
            [say.record.toCheck, record.checkHow],
            ...factsOf(record.versions),
          ]}
        />
        <p>{say.record.end}</p>
      </Sheet>
    </>
  );
}

function Readings({ readings, onlyEnglish }: Pick<Report, "readings" | "onlyEnglish">) {
  const { head, caption, empty, ...say } = useWords().report.readings;
  return (
    <Rows
      caption={caption}
      empty={empty}
      columns={[
        { head: head.what },
        { head: head.shown, number: true },
        { head: head.at },
        { head: head.from },
        { head: head.because },
      ]}
      rows={readings.map(({ what, shown, at, source, because, voided }) => ({
        key: `${at} ${what}`,
        voided: voided !== null,
        cells: [
          what,
          voided === null ? shown : `${shown} ${say.void}`,
          at,
          source,
          voided === null ? (
            <Stated key="b" says={because} onlyEnglish={onlyEnglish} />
          ) : (
            `${say.void}: ${voided}`
          ),
        ],
      }))}
    />
  );
}

function Budget({ lines }: { lines: readonly BudgetLine[] }) {
  const { head, caption, empty } = useWords().report.budget;
  return (
    <Rows
      caption={caption}
      empty={empty}
      columns={[
        { head: head.input },
        { head: head.value, number: true },
        { head: head.u, number: true },
        { head: head.unit },
        { head: head.sensitivity, number: true },
        { head: head.part, number: true },
        { head: head.share, number: true },
      ]}
      rows={lines.map(({ input, value, u, unit, sensitivity, contribution, share }) => ({
        key: input,
        cells: [input, value, u, unit, sensitivity, contribution, share],
      }))}
    />
  );
}

function List({
  items,
  onlyEnglish = [],
}: {
  items: readonly string[];
  onlyEnglish?: Report["onlyEnglish"];
}) {
  if (items.length === 0) return null;
  return (
    <ul>
      {items.map((item) => (
        <li key={item}>
          <Stated says={item} onlyEnglish={onlyEnglish} />
        </li>
      ))}
    </ul>
  );
}
