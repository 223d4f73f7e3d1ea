import { AssaySheet } from "../assays/sheet.tsx";
import { useTell } from "../messages/spoken.ts";
import { CautionLine, ResultDetails, ResultHeadline } from "../result.tsx";
import { Fold } from "../sheet.tsx";
import { AmendmentForms, Amendments } from "./amendments.tsx";
import { AnswerChecks } from "./answer.tsx";
import { Captures } from "./captures.tsx";
import { RecordChain } from "./chain.tsx";
import { IssuedReports } from "./issued-reports.tsx";
import { RecordItem, RecordNotes, RecordPhotos } from "./item.tsx";
import { RecordAxis, RecordDensity, RecordDrawn, RecordStanding } from "./result.tsx";
import { SecondReadings } from "./second-readings.tsx";
import type { RecordView } from "./view.ts";

/** One record: the answer and what stands behind it left, the piece and what may be done with it right. */
export function RecordPage(record: RecordView) {
  return (
    <>
      <RecordStanding {...record} />
      <div class="two turned">
        <div>
          <ResultHeadline result={record.result} />
          <p>
            <CautionLine cautions={record.result.cautions} />
          </p>
          <RecordDensity {...record} />
          <RecordAxis {...record} />
          <Behind {...record} />
          <SecondReadings readings={record.secondReadings ?? []} />
          <RecordNotes {...record} />
          <Amendments amendments={record.amendments} />
          {record.stopped && !record.voided && (
            <AnswerChecks
              stopped={record.stopped}
              action={`/records/${record.id}/answers`}
              csrfToken={record.csrfToken}
              typed={record.refused?.from.endsWith("/answers") ? record.refused.typed : undefined}
            />
          )}
        </div>
        <div>
          <RecordItem {...record} />
          <IssuedReports {...record} />
          <RecordPhotos {...record} />
          <OtherEvidence {...record} />
          <AssaySheet {...record.assay} />
          {!record.voided && (
            <AmendmentForms
              amendable={record.amendable}
              id={record.id}
              csrfToken={record.csrfToken}
              version={record.version}
              refused={record.refused}
            />
          )}
          <RecordChain {...record} />
        </div>
      </div>
    </>
  );
}

/** What the answer rests on, each in its fold with the figure that matters. */
function Behind(record: RecordView) {
  const t = useTell();
  const { alternatives } = record.result;
  const excluded = record.captures.filter(({ voided }) => voided !== undefined).length;
  return (
    <>
      <Fold id="finding" title={t("result.heading")} note={alternatives.length || undefined}>
        <section aria-labelledby="finding-heading">
          <ResultDetails result={record.result} level={2} />
        </section>
      </Fold>
      <RecordDrawn {...record} />
      <Fold
        id="captures"
        title={t("captures.heading")}
        note={
          excluded > 0
            ? `${record.captures.length}, ${t("plots.voided")}: ${excluded}`
            : record.captures.length
        }
        open={excluded > 0}
      >
        <Captures captures={record.captures} />
      </Fold>
    </>
  );
}

/** Where other tests and the price of the metal stand. */
function OtherEvidence(record: Pick<RecordView, "id">) {
  const t = useTell();
  return (
    <Fold id="other-evidence" title={t("record-page.other-evidence")}>
      <p>
        {t("record-page.evidence-lead")}{" "}
        <a href={`/records/${record.id}/evidence`}>{t("record-page.evidence-link")}</a>.
      </p>
      <p>
        <a href={`/records/${record.id}/price`}>{t("metal-price.link")}</a>
      </p>
    </Fold>
  );
}
