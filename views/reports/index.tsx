import { recordedDensity } from "../../server/findings/recorded-density.ts";
import { photoName } from "../../server/photos/photo-name.ts";
import type { BudgetLine, Line, Report, ReportPhoto } from "../../server/reports/report.ts";
import { shareShown } from "../../server/reports/results.ts";
import { Photos } from "../photos.tsx";
import { curveOf } from "../plots/curve.ts";
import { DensityAxis } from "../plots/density.tsx";
import { Facts, Rows, Sheet } from "../sheet.tsx";
import { QrCode } from "./qr.tsx";

export interface ReportView {
  report: Report;
  recordHref: string;
  pdfHref: string;
}

const factsOf = (lines: readonly Line[]) => lines.map(({ label, value }) => [label, value] as const);

/** A report to print: the result first, what it rests on after it. Draws what the report states and adds nothing. */
export function ReportPage({ report, recordHref, pdfHref }: ReportView) {
  return (
    <>
      <p class="not-printed row">
        <a href={pdfHref}>This report as PDF</a>
        <a href={recordHref}>The record behind it</a>
        <span class="hint">To print, use the browser's own print command.</span>
      </p>
      <p>
        <strong>
          Report {report.number}, copy {report.copy}
        </strong>
      </p>
      <Standing {...report} />
      <div class="columns">
        <Sheet id="issued" title="Issued">
          <Facts
            facts={[...factsOf(report.house), ["Customer", report.customer], ...factsOf(report.dates)]}
          />
        </Sheet>
        <Sheet id="item" title="Item tested">
          <Facts facts={factsOf(report.item)} />
          <Photos photos={report.photos.map((photo) => photoViewOf(photo, ticketOf(report)))} />
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

const ticketOf = ({ item }: Report) => item.find(({ label }) => label === "Ticket")?.value ?? "the item";

function photoViewOf({ at, shows, width, height, ...photo }: ReportPhoto, ticket: string) {
  return { src: `/photos/${photoName(photo)}`, ticket, shows, when: at, width, height };
}

function Standing({ voided, replaces }: Report) {
  return (
    <>
      {voided !== null && (
        <p class="problems">
          <strong>The result of this record was declared void: {voided}. It must not be used.</strong>
        </p>
      )}
      {replaces && (
        <p>
          <strong>
            {replaces.number === null
              ? "This report states an amended record."
              : `Amendment to report ${replaces.number}, which it replaces.`}
          </strong>{" "}
          Reason: {replaces.reason} ({replaces.by}, {replaces.at}).
        </p>
      )}
    </>
  );
}

function Results({ results, uncertaintyStatement, plot, opinion }: Report) {
  const bands = opinion.alive.flatMap(({ id, name, band }) =>
    band ? [{ id, name, low: band[0], high: band[1], alive: true }] : [],
  );
  return (
    <Sheet id="results" title="Results">
      <Rows
        caption="Measured, and computed from what was measured"
        empty="No result."
        columns={[
          { head: "Quantity" },
          { head: "Value", number: true },
          { head: "Unit" },
          { head: "Uncertainty" },
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
}: Report) {
  return (
    <>
      <Sheet id="opinion" title={opinion.heading}>
        <p>
          The density {opinion.state}. {opinion.because}
        </p>
        {opinion.alive.length > 0 && (
          <p>Alive, that is, not excluded: {opinion.alive.map(({ name }) => name).join(", ")}.</p>
        )}
        <List items={decision} />
        {otherTests.length > 0 && (
          <>
            <h3>Other tests recorded with the piece, not part of the density result</h3>
            <List items={otherTests} />
          </>
        )}
      </Sheet>
      {customerSupplied.length > 0 && (
        <Sheet id="supplied" title="Supplied by the customer, not measured here">
          <Facts facts={factsOf(customerSupplied)} />
        </Sheet>
      )}
      <Sheet id="cautions" title="Cautions and conditions of this report">
        <List items={[...cautions, ...statements]} />
        {authorisedBy !== null && <p>Authorised by {authorisedBy}</p>}
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
}: Report) {
  const notes = [...deviations, ...warnings];
  return (
    <>
      <Sheet id="method" title="Method">
        <p>{method}</p>
        <p>
          Corrected for: {corrections.join("; ")}. Sampling: {sampling}
        </p>
        <p>
          {notes.length === 0
            ? "Deviations from the method: none."
            : "Deviations from the method and warnings:"}
        </p>
        <List items={notes} />
      </Sheet>
      <Sheet id="conditions" title="Conditions and equipment">
        <Facts facts={factsOf(conditions)} />
      </Sheet>
      <Sheet id="readings" title="Readings">
        <Rows
          caption="In the order taken"
          empty="No reading was kept."
          columns={[
            { head: "What" },
            { head: "Shown", number: true },
            { head: "At (UTC)" },
            { head: "From" },
            { head: "Taken because" },
          ]}
          rows={readings.map(({ what, shown, at, source, because, voided }) => ({
            key: `${at} ${what}`,
            voided: voided !== null,
            cells: [
              what,
              voided === null ? shown : `${shown} void`,
              at,
              source,
              voided === null ? because : `void: ${voided}`,
            ],
          }))}
        />
      </Sheet>
      <Sheet id="budget" title="Budget of the density">
        <Budget lines={budget} />
      </Sheet>
      <Sheet id="record" title="Record">
        <QrCode text={`underhook record ${record.hash}`} />
        <Facts
          facts={[
            ["Record", `${record.subject}, row ${record.row}`],
            ["Hash (SHA-256)", <code key="h">{record.hash}</code>],
            ["Signed by key", record.keyId],
            ["To check", record.checkHow],
            ...factsOf(record.versions),
          ]}
        />
        <p>End of report.</p>
      </Sheet>
    </>
  );
}

function Budget({ lines }: { lines: readonly BudgetLine[] }) {
  return (
    <Rows
      caption="Largest share first"
      empty="No budget was recorded."
      columns={[
        { head: "Input" },
        { head: "Value", number: true },
        { head: "u", number: true },
        { head: "Unit" },
        { head: "Sensitivity, g/cm³ per unit", number: true },
        { head: "Part, g/cm³", number: true },
        { head: "Share", number: true },
      ]}
      rows={lines.map(({ input, value, u, unit, sensitivity, contribution, share }) => ({
        key: input,
        cells: [input, value, u, unit, sensitivity, contribution, shareShown(share)],
      }))}
    />
  );
}

function List({ items }: { items: readonly string[] }) {
  if (items.length === 0) return null;
  return (
    <ul>
      {items.map((item) => (
        <li key={item}>{item}</li>
      ))}
    </ul>
  );
}
