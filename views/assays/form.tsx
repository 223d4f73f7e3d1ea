import { AboutFields, Csrf, errorsOf, Field, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import type { AssayPageView } from "./view.ts";

/** What stands on the laboratory's report. */
export function AssayForm({ href, facts, values, problems, csrfToken, about }: AssayPageView) {
  const t = useTell();
  const errorOf = errorsOf(problems);
  const entry = <N extends keyof typeof values>(name: N) => ({ name, value: values[name], ...errorOf(name) });
  return (
    <form method="post" action={href} class="sheet">
      <h2>{facts === undefined ? t("assay.enter") : t("assay.follow")}</h2>
      <Csrf token={csrfToken} />
      <AboutFields about={about} />
      <div class="row">
        <Select
          name="metal"
          label={t("assay.form.metal")}
          value={values.metal}
          options={(["gold", "silver", "platinum", "palladium"] as const).map((value) => ({
            value,
            label: t(`lots.metals.${value}`),
          }))}
        />
        <Field kind="decimal" {...entry("permille")} label={t("assay.form.permille")} after="‰" required />
        <Field
          kind="decimal"
          {...entry("expanded")}
          label={t("assay.form.expanded")}
          hint={t("assay.form.expanded-hint")}
          after="‰"
        />
        <Field kind="decimal" {...entry("k")} label={t("assay.form.k")} hint={t("assay.form.k-hint")} />
      </div>
      <div class="row">
        <Field {...entry("laboratory")} label={t("assay.form.laboratory")} required maxLength={200} />
        <Field {...entry("report")} label={t("assay.form.report")} required maxLength={100} />
        <Field kind="date" {...entry("date")} label={t("assay.form.date")} required />
      </div>
      <Field
        {...entry("method")}
        label={t("assay.form.method")}
        hint={t("assay.form.method-hint")}
        required
        maxLength={200}
      />
      {facts !== undefined && (
        <Field
          {...entry("reason")}
          label={t("assay.form.reason")}
          hint={t("assay.form.reason-hint")}
          maxLength={400}
        />
      )}
      <Field {...entry("by")} label={t("assay.form.by")} maxLength={100} />
      <p class="hint">{t("assay.form.stays")}</p>
      <button type="submit">{t("assay.form.go")}</button>
    </form>
  );
}
