import type { ComponentChildren } from "preact";
import { type FindingView, FindingWords } from "../finding.tsx";
import { BudgetBars, type BudgetInput } from "../plots/budget.tsx";
import { DensityAxis, type DensityPlot } from "../plots/density.tsx";
import { Repeats, type RepeatsPlot } from "../plots/repeats.tsx";
import { Facts, Sheet } from "../sheet.tsx";
import type { Locale } from "../words/index.ts";
import { type Amendment, AmendmentForms, Amendments } from "./amendments.tsx";
import { type Capture, Captures } from "./captures.tsx";

/** Everything a record shows; numbers are written out, decimals as captured. */
export interface RecordView {
  id: string;
  ticket: string;
  piece: string;
  /** condition, marks, stones: the customer's words are marked as such */
  description?: string;
  saidByCustomer?: string;
  when: string;
  operator?: string;
  place?: string;
  method: string;
  /** "10.488 ± 0.014 g/cm³" and its words: at which temperature, which interval */
  density: string;
  densityWords: string;
  /** further results: at 20 °C, relative density, volume, mass */
  results: readonly (readonly [name: string, value: ComponentChildren])[];
  /** liquid, air, balance, hanger, check of the day */
  conditions: readonly (readonly [name: string, value: ComponentChildren])[];
  finding?: FindingView;
  plot: Omit<DensityPlot, "id">;
  budget: readonly BudgetInput[];
  repeats?: Omit<RepeatsPlot, "id">;
  captures: readonly Capture[];
  warnings: readonly string[];
  /** answers to doubts and notes, in order */
  notes: readonly { when: string; by: string; says: string }[];
  photos: readonly { src: string; alt: string; width: number; height: number }[];
  amendments: readonly Amendment[];
  voided?: { when: string; by: string; reason: string };
  reports: readonly { number: string; href: string; when: string }[];
  /** place in the chain */
  chain: { sequence: number; hash: string; previous: string };
  versions: readonly (readonly [name: string, value: string])[];
  csrfToken: string;
  /** sent along so that a repeated submit stores once */
  stepKey: string;
  locale?: Locale;
}

/** One record: result first, then how it came about down to the lines as received. */
export function RecordPage(record: RecordView) {
  const { locale = "en" } = record;
  return (
    <>
      {record.voided && (
        <p class="problems">
          <strong>Voided</strong> {record.voided.when} by {record.voided.by}: {record.voided.reason}. What was
          recorded stays below as it was.
        </p>
      )}
      <p class="result-value">{record.density}</p>
      <p>{record.densityWords}</p>
      {record.warnings.map((warning) => (
        <p key={warning}>
          <strong>Note:</strong> {warning}
        </p>
      ))}
      <div class="columns">
        {record.finding && <FindingWords finding={record.finding} locale={locale} />}
        <Sheet id="piece" title="Piece">
          <Facts
            facts={[
              ["Ticket", record.ticket],
              ["Piece", record.piece],
              ["Description", record.description],
              ["Said by the customer, not checked", record.saidByCustomer],
              ["Method", record.method],
              ["Weighed", record.when],
              ["By", record.operator],
              ["At", record.place],
              ...record.results,
            ]}
          />
          {record.photos.map((photo) => (
            <img
              key={photo.src}
              class="photo"
              src={photo.src}
              alt={photo.alt}
              width={photo.width}
              height={photo.height}
              loading="lazy"
            />
          ))}
        </Sheet>
      </div>
      <div class="sheet">
        <DensityAxis id="density" {...record.plot} locale={locale} />
      </div>
      <div class="columns">
        <div class="sheet">
          <BudgetBars id="budget" inputs={record.budget} locale={locale} />
        </div>
        {record.repeats && (
          <div class="sheet">
            <Repeats id="repeats" {...record.repeats} locale={locale} />
          </div>
        )}
        <Sheet id="conditions" title="Conditions">
          <Facts facts={record.conditions} />
        </Sheet>
      </div>
      <Captures captures={record.captures} />
      {record.notes.length > 0 && (
        <Sheet id="notes" title="Notes and answers">
          <ul>
            {record.notes.map(({ when, by, says }) => (
              <li key={`${when} ${says}`}>
                {says} <small>({[by, when].filter(Boolean).join(", ")})</small>
              </li>
            ))}
          </ul>
        </Sheet>
      )}
      <Sheet id="other-evidence" title="Other evidence">
        <p>
          Magnet, conductivity, sound speed, ring, size, fineness:{" "}
          <a href={`/records/${record.id}/evidence`}>enter them and see what stays alive</a>.
        </p>
      </Sheet>
      <Sheet id="reports" title="Reports">
        {record.reports.length === 0 && <p>No report has been issued.</p>}
        <ul>
          {record.reports.map(({ number, href, when }) => (
            <li key={number}>
              <a href={href}>Report {number}</a>, {when}
            </li>
          ))}
        </ul>
        <form method="post" action={`/records/${record.id}/reports`}>
          <input type="hidden" name="_csrf" value={record.csrfToken} />
          <input type="hidden" name="step" value={record.stepKey} />
          <button type="submit">Issue a report</button>
        </form>
      </Sheet>
      <Amendments amendments={record.amendments} />
      {!record.voided && (
        <AmendmentForms id={record.id} csrfToken={record.csrfToken} stepKey={record.stepKey} />
      )}
      <Sheet id="chain" title="Place in the ledger">
        <Facts
          facts={[
            ["Entry", `${record.chain.sequence}`],
            ["Check sum", <code key="h">{record.chain.hash}</code>],
            ["Check sum of the entry before", <code key="p">{record.chain.previous}</code>],
            ...record.versions,
          ]}
        />
        <p>
          <a href={`/records/${record.id}/file`}>This record as a file of its own</a>, with its signed way up
          the chain.
        </p>
        <p class="hint">Anyone can check that file, or the whole chain, with the command underhook verify.</p>
      </Sheet>
    </>
  );
}
