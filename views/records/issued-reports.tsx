import { Field, Select } from "../forms.tsx";
import { languageNames, locales } from "../messages/language.ts";
import { useLocale, useTell } from "../messages/spoken.ts";
import { Sheet } from "../sheet.tsx";
import type { RecordView } from "./view.ts";

/** The reports of a record, and the form that issues one. */
export function IssuedReports(record: Pick<RecordView, "csrfToken" | "id" | "reports" | "stepKey">) {
  const locale = useLocale();
  const t = useTell();
  return (
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
  );
}
