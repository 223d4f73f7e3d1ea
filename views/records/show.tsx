import type { ComponentChildren } from "preact";
import type { Message } from "../../calibration/message.ts";
import { AssaySheet } from "../assays/sheet.tsx";
import type { AssayView } from "../assays/view.ts";
import { SecondReadingRows } from "../bench/second-person.tsx";
import type { SecondReadingView } from "../bench/view.ts";
import { type FindingView, FindingWords } from "../finding.tsx";
import { Field, Select } from "../forms.tsx";
import { languageNames, locales } from "../messages/language.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import { tellId } from "../messages/tell.ts";
import {
  ExcludedPhotos,
  type ExcludePhotoForm,
  PhotoForm,
  type PhotoFormView,
  Photos,
  type PhotoView,
} from "../photos.tsx";
import { BudgetBars, type BudgetInput } from "../plots/budget.tsx";
import { DensityAxis } from "../plots/density.tsx";
import type { DensityPlot } from "../plots/density-plot.ts";
import { Repeats, type RepeatsPlot } from "../plots/repeats.tsx";
import { Facts, Sheet } from "../sheet.tsx";
import { codeMark, Told } from "../told.tsx";
import {
  type AmendableReading,
  type Amendment,
  AmendmentForms,
  Amendments,
  type RefusedRecordForm,
} from "./amendments.tsx";
import { AnswerChecks, type StoppedRecord } from "./answer.tsx";
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
  warnings: readonly (Message | string)[];
  /** answers to doubts and notes, in order */
  notes: readonly { when: string; by: string; says: Told }[];
  photos: readonly PhotoView[];
  photoForm: PhotoFormView;
  excludePhoto: ExcludePhotoForm;
  /** why each photo that was set aside was */
  excludedPhotos: readonly string[];
  amendments: readonly Amendment[];
  /** typed readings that an amendment can put right */
  amendable: readonly AmendableReading[];
  /** the bench was closed by a failed check while it was weighed */
  closed?: { since: string; says: Told };
  /** set when the result shown is an amended one */
  amended?: { when: string; by: string };
  voided?: { when: string; by: string; reason: string };
  /** a form of the page that was sent back */
  refused?: RefusedRecordForm;
  /** set while checks stop what it states */
  stopped?: StoppedRecord;
  assay: AssayView;
  reports: readonly { number: string; href: string; when: string }[];
  /** place in the chain */
  chain: { sequence: number; hash: string; previous: string };
  versions: readonly (readonly [name: string, value: string])[];
  csrfToken: string;
  /** sent along so that a repeated submit stores once */
  stepKey: string;
  /** how many entries about it the page shows */
  version: number;
}

/** One record: result first, then how it came about down to the lines as received. */
export function RecordPage(record: RecordView) {
  const locale = useLocale();
  const t = useTell();
  return (
    <>
      {record.refused && (
        <div class="problems" role="alert">
          <p {...codeMark(record.refused.says)}>
            <Told says={record.refused.says} />
          </p>
        </div>
      )}
      {record.voided && (
        <p class="problems">
          <strong>{t("record-page.voided")}</strong>{" "}
          {t("record-page.voided-by", {
            when: record.voided.when,
            by: record.voided.by,
            reason: record.voided.reason,
          })}{" "}
          {t("record-page.stays-below")}
        </p>
      )}
      {record.closed && (
        <p class="problems">
          <strong>{t("record-page.weighed-closed", { since: record.closed.since })}</strong>{" "}
          <Told says={record.closed.says} /> {t("record-page.weighed-closed-todo")}
        </p>
      )}
      <p class="result-value">{record.density}</p>
      {record.amended && (
        <p>
          <a href="#amendments-heading">
            {t("record-page.amended", { when: record.amended.when, by: record.amended.by })}
          </a>
        </p>
      )}
      <p>
        {record.densityWords} <a href={`/records/${record.id}/share`}>{t("share.link")}</a>
      </p>
      {record.warnings.map((warning) => (
        <p key={typeof warning === "string" ? warning : warning.code}>
          <strong>{t("record-page.note")}</strong> <Told says={warning} />
        </p>
      ))}
      <div class="columns">
        {record.finding && <FindingWords finding={record.finding} />}
        <Sheet id="piece" title={t("record-page.piece")}>
          <Facts
            facts={[
              [t("record-page.ticket"), record.ticket],
              [t("record-page.piece"), record.piece],
              [t("record-page.description"), record.description],
              [t("record-page.brought-by"), record.broughtBy],
              [t("record-page.said-by-customer"), record.saidByCustomer],
              [t("record-page.method"), record.method],
              [t("record-page.weighed"), record.when],
              [t("record-page.by"), record.operator],
              [t("record-page.at"), record.place],
              ...record.results,
            ]}
          />
        </Sheet>
      </div>
      <Sheet id="photos" title={t("photos.heading")}>
        {record.photos.length === 0 ? (
          <p>{t("photos.none")}</p>
        ) : (
          <Photos photos={record.photos} exclude={record.excludePhoto} />
        )}
        <ExcludedPhotos reasons={record.excludedPhotos} />
        <details>
          <summary>{t("photos.add")}</summary>
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
        <Sheet id="conditions" title={t("record-page.conditions")}>
          <Facts facts={record.conditions} />
        </Sheet>
      </div>
      <Captures captures={record.captures} />
      <SecondReadings readings={record.secondReadings ?? []} />
      {record.notes.length > 0 && (
        <Sheet id="notes" title={t("record-page.notes")}>
          <ul>
            {record.notes.map(({ when, by, says }) => (
              <li key={`${when} ${typeof says === "string" ? says : says.code}`}>
                {typeof says === "string" ? says : <Told says={says} />}{" "}
                <small>({[by, when].filter(Boolean).join(", ")})</small>
              </li>
            ))}
          </ul>
        </Sheet>
      )}
      <Sheet id="other-evidence" title={t("record-page.other-evidence")}>
        <p>
          {t("record-page.evidence-lead")}{" "}
          <a href={`/records/${record.id}/evidence`}>{t("record-page.evidence-link")}</a>.
        </p>
        <p>
          <a href={`/records/${record.id}/price`}>{t("metal-price.link")}</a>
        </p>
      </Sheet>
      <AssaySheet {...record.assay} />
      <Sheet id="reports" title={t("record-page.reports")}>
        {record.reports.length === 0 && <p>{t("record-page.no-report")}</p>}
        <ul>
          {record.reports.map(({ number, href, when }) => (
            <li key={number}>
              <a href={href}>{t("record-page.report", { number })}</a>, {when}
            </li>
          ))}
        </ul>
        <form method="post" action={`/records/${record.id}/reports`}>
          <input type="hidden" name="_csrf" value={record.csrfToken} />
          <input type="hidden" name="step" value={record.stepKey} />
          <Field
            name="by"
            id="authorised-by"
            label={t("record-page.authorised-by")}
            hint={t("record-page.authorised-by-hint")}
            maxLength={100}
          />
          <Select
            name="language"
            label={t("report.language")}
            value={locale}
            options={locales.map((value) => ({ value, label: languageNames[value] }))}
          />
          <button type="submit">{t("record-page.issue")}</button>
        </form>
      </Sheet>
      <Amendments amendments={record.amendments} />
      {record.stopped && !record.voided && (
        <AnswerChecks
          stopped={record.stopped}
          action={`/records/${record.id}/answers`}
          csrfToken={record.csrfToken}
        />
      )}
      {!record.voided && (
        <AmendmentForms
          amendable={record.amendable}
          id={record.id}
          csrfToken={record.csrfToken}
          version={record.version}
          refused={record.refused}
        />
      )}
      <Sheet id="chain" title={t("record-page.chain")}>
        <Facts
          facts={[
            [t("record-page.entry"), `${record.chain.sequence}`],
            [t("record-page.hash"), <code key="h">{record.chain.hash}</code>],
            [t("record-page.hash-before"), <code key="p">{record.chain.previous}</code>],
            ...record.versions.map(
              ([name, value]) => [tellId("record-page.version", name, locale), value] as const,
            ),
          ]}
        />
        <p>
          <a href={`/records/${record.id}/file`}>{t("record-page.file")}</a>, {t("record-page.file-rest")}
        </p>
        <p class="hint">{t("record-page.verify")}</p>
      </Sheet>
    </>
  );
}

/** What second persons read of typed readings, agreeing or not. */
function SecondReadings({ readings }: { readings: readonly SecondReadingView[] }) {
  const t = useTell();
  if (readings.length === 0) return null;
  return (
    <Sheet id="second-person" title={t("second-person.heading")}>
      {readings.map((one) => (
        <div key={one.when}>
          <p>
            {t("second-person.read-by", {
              by: one.by,
              typedBy: one.typedBy,
              when: one.when,
              above: one.above,
            })}
          </p>
          <SecondReadingRows reading={one} />
        </div>
      ))}
    </Sheet>
  );
}
