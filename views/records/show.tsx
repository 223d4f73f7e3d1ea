import { AssaySheet } from "../assays/sheet.tsx";
import { useTell } from "../messages/spoken.ts";
import { ResultDetails, ResultHeadline } from "../result.tsx";
import { Sheet } from "../sheet.tsx";
import { AmendmentForms, Amendments } from "./amendments.tsx";
import { AnswerChecks } from "./answer.tsx";
import { Captures } from "./captures.tsx";
import { RecordChain } from "./chain.tsx";
import { IssuedReports } from "./issued-reports.tsx";
import { RecordItem, RecordNotes, RecordPhotos } from "./item.tsx";
import { RecordDensity, RecordDrawn, RecordStanding } from "./result.tsx";
import { SecondReadings } from "./second-readings.tsx";
import type { RecordView } from "./view.ts";

/** One record: result first, then how it came about down to the lines as received. */
export function RecordPage(record: RecordView) {
  const t = useTell();
  return (
    <>
      <RecordStanding {...record} />
      <ResultHeadline result={record.result} />
      <RecordDensity {...record} />
      <div class="columns">
        <Sheet id="finding" title={t("result.heading")}>
          <ResultDetails result={record.result} />
        </Sheet>
        <RecordItem {...record} />
      </div>
      <RecordPhotos {...record} />
      <RecordDrawn {...record} />
      <Captures captures={record.captures} />
      <SecondReadings readings={record.secondReadings ?? []} />
      <RecordNotes {...record} />
      <OtherEvidence {...record} />
      <AssaySheet {...record.assay} />
      <IssuedReports {...record} />
      <Amendments amendments={record.amendments} />
      {record.stopped && !record.voided && (
        <AnswerChecks
          stopped={record.stopped}
          action={`/records/${record.id}/answers`}
          csrfToken={record.csrfToken}
          typed={record.refused?.from.endsWith("/answers") ? record.refused.typed : undefined}
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
      <RecordChain {...record} />
    </>
  );
}

/** Where other tests and the price of the metal stand. */
function OtherEvidence(record: Pick<RecordView, "id">) {
  const t = useTell();
  return (
    <Sheet id="other-evidence" title={t("record-page.other-evidence")}>
      <p>
        {t("record-page.evidence-lead")}{" "}
        <a href={`/records/${record.id}/evidence`}>{t("record-page.evidence-link")}</a>.
      </p>
      <p>
        <a href={`/records/${record.id}/price`}>{t("metal-price.link")}</a>
      </p>
    </Sheet>
  );
}
