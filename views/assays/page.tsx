import { AboutFields, Csrf, Field, Problems } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Facts, Sheet } from "../sheet.tsx";
import { AssayForm } from "./form.tsx";
import type { AssayPageView } from "./view.ts";

/** The laboratory assays of one recorded piece, and entering one. */
export function AssayPage(view: AssayPageView) {
  const t = useTell();
  const { record, facts, problems, rows } = view;
  return (
    <>
      <p>
        <a href={record.href}>{t("records.record-of", { ticket: record.ticket })}</a>: {record.density},{" "}
        {record.mass}.
      </p>
      <Problems heading={t("assay.problems")} problems={problems} />
      <Sheet id="laboratory-result" title={t("assay.heading")}>
        {facts === undefined ? <p>{t("assay.none")}</p> : <Facts facts={facts} />}
        <p class="hint">{t("assay.hint")}</p>
      </Sheet>
      <AssayForm {...view} />
      {rows.length > 0 && <EveryAssay {...view} />}
    </>
  );
}

function EveryAssay({ href, rows, csrfToken, about }: AssayPageView) {
  const t = useTell();
  return (
    <Sheet id="every-result" title={t("assay.list.heading")}>
      <ol>
        {rows.map(({ id, message, standing, reason, counts }) => (
          <li key={id}>
            <p>
              {message} <strong>{standing}</strong>
            </p>
            {reason !== "" && <p>{reason}</p>}
            {counts && (
              <details>
                <summary>{t("assay.list.open")}</summary>
                <form method="post" action={`${href}/${id}/voiding`}>
                  <Csrf token={csrfToken} />
                  <AboutFields about={about} />
                  <Field
                    name="reason"
                    id={`reason-${id}`}
                    label={t("assay.list.reason")}
                    required
                    maxLength={400}
                  />
                  <button type="submit" class="plain">
                    {t("assay.list.go")}
                  </button>
                </form>
              </details>
            )}
          </li>
        ))}
      </ol>
    </Sheet>
  );
}
