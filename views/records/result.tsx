import { useLocale, useTell } from "../messages/spoken.ts";
import { BudgetBars } from "../plots/budget.tsx";
import { DensityAxis } from "../plots/density.tsx";
import { Repeats } from "../plots/repeats.tsx";
import { codeMark, Sentence } from "../sentence.tsx";
import { Facts, Fold } from "../sheet.tsx";
import type { RecordView } from "./view.ts";

/** What stands before the result: a form sent back, a record that is void, a bench that was closed. */
export function RecordStanding(record: Pick<RecordView, "closed" | "refused" | "voided">) {
  const t = useTell();
  return (
    <>
      {record.refused && (
        <div class="problems" role="alert">
          <p {...codeMark(record.refused.message)}>
            <Sentence message={record.refused.message} />
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
          <Sentence message={record.closed.message} /> {t("record-page.weighed-closed-todo")}
        </p>
      )}
    </>
  );
}

/** The density in one line, what was amended, and what the checks say of it. */
export function RecordDensity(record: Pick<RecordView, "amended" | "id" | "measured" | "warnings">) {
  const t = useTell();
  const { measured } = record;
  return (
    <>
      {measured && <p class="result-value">{measured.density}</p>}
      {record.amended && (
        <p>
          <a href="#amendments-heading">
            {t("record-page.amended", { when: record.amended.when, by: record.amended.by })}
          </a>
        </p>
      )}
      <p>
        {measured && (
          <>
            {measured.densityWords} <a href={`/records/${record.id}/share`}>{t("share.link")}</a>{" "}
          </>
        )}
        <a href={`/records/${record.id}/label.pdf`}>{t("label.link")}</a>
      </p>
      {record.warnings.map((warning) => (
        <p key={typeof warning === "string" ? warning : warning.code}>
          <strong>{t("record-page.note")}</strong> <Sentence message={warning} />
        </p>
      ))}
    </>
  );
}

/** So many bands stand under the axis; the others are in its table. */
const mostBands = 7;

/** The distribution on the density axis. */
export function RecordAxis({ measured }: Pick<RecordView, "measured">) {
  const locale = useLocale();
  if (!measured) return null;
  return <DensityAxis id="density" captionUnseen mostRows={mostBands} {...measured.plot} locale={locale} />;
}

/** The budget, the repeats, and what it was measured in. */
export function RecordDrawn(record: Pick<RecordView, "budget" | "conditions" | "measured" | "repeats">) {
  const locale = useLocale();
  const t = useTell();
  return (
    <>
      {record.measured && (
        <Fold id="budget-fold" title={t("bench.fold.budget")}>
          <BudgetBars id="budget" captionUnseen inputs={record.budget} locale={locale} />
        </Fold>
      )}
      {record.repeats && (
        <Fold id="repeats-fold" title={t("bench.fold.repeats")} note={record.repeats.repeats.length}>
          <Repeats id="repeats" captionUnseen {...record.repeats} locale={locale} />
        </Fold>
      )}
      <Fold id="conditions" title={t("record-page.conditions")}>
        <Facts facts={record.conditions} />
      </Fold>
    </>
  );
}
