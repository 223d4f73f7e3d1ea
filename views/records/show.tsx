import type { ComponentChildren } from "preact";
import type { SecondReadingView } from "../../server/station/view.ts";
import { AssaySheet } from "../assays/sheet.tsx";
import type { AssayView } from "../assays/view.ts";
import { SecondReadingRows } from "../bench/second-person.tsx";
import { type FindingView, FindingWords } from "../finding.tsx";
import { Field, Select } from "../forms.tsx";
import {
  type PhotoAsideForm,
  PhotoForm,
  type PhotoFormView,
  Photos,
  PhotosAside,
  type PhotoView,
} from "../photos.tsx";
import { BudgetBars, type BudgetInput } from "../plots/budget.tsx";
import { DensityAxis } from "../plots/density.tsx";
import type { DensityPlot } from "../plots/density-plot.ts";
import { Repeats, type RepeatsPlot } from "../plots/repeats.tsx";
import { Facts, Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { languageNames, locales } from "../words/index.ts";
import { useLocale, useWords } from "../words/spoken.ts";
import { type AmendableReading, type Amendment, AmendmentForms, Amendments } from "./amendments.tsx";
import { type Capture, Captures } from "./captures.tsx";

/** Everything a record shows; numbers are written out, decimals as captured. */
export interface RecordView {
  id: string;
  ticket: string;
  piece: string;
  /** condition, marks, stones: the customer's words are marked as such */
  description?: string;
  saidByCustomer?: string;
  /** who brought it, in the house's own words */
  broughtBy?: string;
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
  /** what second persons read of typed readings, oldest first */
  secondReadings?: readonly SecondReadingView[];
  warnings: readonly string[];
  /** answers to doubts and notes, in order */
  notes: readonly { when: string; by: string; says: string }[];
  photos: readonly PhotoView[];
  photoForm: PhotoFormView;
  photoAside: PhotoAsideForm;
  /** why each photo that was set aside was */
  photosAside: readonly string[];
  amendments: readonly Amendment[];
  /** typed readings that an amendment can put right */
  amendable: readonly AmendableReading[];
  /** the bench was closed by a failed check while it was weighed */
  closed?: { since: string; says: string };
  /** set when the result shown is an amended one */
  amended?: { when: string; by: string };
  voided?: { when: string; by: string; reason: string };
  assay: AssayView;
  reports: readonly { number: string; href: string; when: string }[];
  /** place in the chain */
  chain: { sequence: number; hash: string; previous: string };
  versions: readonly (readonly [name: string, value: string])[];
  csrfToken: string;
  /** sent along so that a repeated submit stores once */
  stepKey: string;
}

/** One record: result first, then how it came about down to the lines as received. */
export function RecordPage(record: RecordView) {
  const locale = useLocale();
  const { record: say, report, metalPrice, photos, share } = useWords();
  return (
    <>
      {record.voided && (
        <p class="problems">
          <strong>{say.voided}</strong>{" "}
          {say.voidedBy(record.voided.when, record.voided.by, record.voided.reason)} {say.staysBelow}
        </p>
      )}
      {record.closed && (
        <p class="problems">
          <strong>{say.weighedClosed(record.closed.since)}</strong> <Told says={record.closed.says} />{" "}
          {say.weighedClosedTodo}
        </p>
      )}
      <p class="result-value">{record.density}</p>
      {record.amended && (
        <p>
          <a href="#amendments-heading">{say.amended(record.amended.when, record.amended.by)}</a>
        </p>
      )}
      <p>
        {record.densityWords} <a href={`/records/${record.id}/share`}>{share.link}</a>
      </p>
      {record.warnings.map((warning) => (
        <p key={warning}>
          <strong>{say.note}</strong> <Told says={warning} />
        </p>
      ))}
      <div class="columns">
        {record.finding && <FindingWords finding={record.finding} />}
        <Sheet id="piece" title={say.piece}>
          <Facts
            facts={[
              [say.ticket, record.ticket],
              [say.piece, record.piece],
              [say.description, record.description],
              [say.broughtBy, record.broughtBy],
              [say.saidByCustomer, record.saidByCustomer],
              [say.method, record.method],
              [say.weighed, record.when],
              [say.by, record.operator],
              [say.at, record.place],
              ...record.results,
            ]}
          />
        </Sheet>
      </div>
      <Sheet id="photos" title={photos.heading}>
        {record.photos.length === 0 ? (
          <p>{photos.none}</p>
        ) : (
          <Photos photos={record.photos} aside={record.photoAside} />
        )}
        <PhotosAside reasons={record.photosAside} />
        <details>
          <summary>{photos.add}</summary>
          <PhotoForm {...record.photoForm} />
        </details>
      </Sheet>
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
        <Sheet id="conditions" title={say.conditions}>
          <Facts facts={record.conditions} />
        </Sheet>
      </div>
      <Captures captures={record.captures} />
      <SecondReadings readings={record.secondReadings ?? []} />
      {record.notes.length > 0 && (
        <Sheet id="notes" title={say.notes}>
          <ul>
            {record.notes.map(({ when, by, says }) => (
              <li key={`${when} ${says}`}>
                {says} <small>({[by, when].filter(Boolean).join(", ")})</small>
              </li>
            ))}
          </ul>
        </Sheet>
      )}
      <Sheet id="other-evidence" title={say.otherEvidence}>
        <p>
          {say.evidenceLead} <a href={`/records/${record.id}/evidence`}>{say.evidenceLink}</a>.
        </p>
        <p>
          <a href={`/records/${record.id}/price`}>{metalPrice.link}</a>
        </p>
      </Sheet>
      <AssaySheet {...record.assay} />
      <Sheet id="reports" title={say.reports}>
        {record.reports.length === 0 && <p>{say.noReport}</p>}
        <ul>
          {record.reports.map(({ number, href, when }) => (
            <li key={number}>
              <a href={href}>{say.report(number)}</a>, {when}
            </li>
          ))}
        </ul>
        <form method="post" action={`/records/${record.id}/reports`}>
          <input type="hidden" name="_csrf" value={record.csrfToken} />
          <input type="hidden" name="step" value={record.stepKey} />
          <Field
            name="by"
            id="authorised-by"
            label={say.authorisedBy}
            hint={say.authorisedByHint}
            maxLength={100}
          />
          <Select
            name="language"
            label={report.language}
            value={locale}
            options={locales.map((value) => ({ value, label: languageNames[value] }))}
          />
          <button type="submit">{say.issue}</button>
        </form>
      </Sheet>
      <Amendments amendments={record.amendments} />
      {!record.voided && (
        <AmendmentForms
          amendable={record.amendable}
          id={record.id}
          csrfToken={record.csrfToken}
          stepKey={record.stepKey}
        />
      )}
      <Sheet id="chain" title={say.chain}>
        <Facts
          facts={[
            [say.entry, `${record.chain.sequence}`],
            [say.hash, <code key="h">{record.chain.hash}</code>],
            [say.hashBefore, <code key="p">{record.chain.previous}</code>],
            ...record.versions.map(([name, value]) => [say.version[name] ?? name, value] as const),
          ]}
        />
        <p>
          <a href={`/records/${record.id}/file`}>{say.file}</a>, {say.fileRest}
        </p>
        <p class="hint">{say.verify}</p>
      </Sheet>
    </>
  );
}

/** What second persons read of typed readings, agreeing or not. */
function SecondReadings({ readings }: { readings: readonly SecondReadingView[] }) {
  const say = useWords().secondPerson;
  if (readings.length === 0) return null;
  return (
    <Sheet id="second-person" title={say.heading}>
      {readings.map((one) => (
        <div key={one.when}>
          <p>{say.readBy(one.by, one.typedBy, one.when, one.above)}</p>
          <SecondReadingRows reading={one} />
        </div>
      ))}
    </Sheet>
  );
}
