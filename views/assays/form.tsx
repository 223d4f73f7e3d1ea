import { Csrf, errorsOf, Field, Select } from "../forms.tsx";
import { useWords } from "../words/spoken.ts";
import type { AssayPageView } from "./view.ts";

/** What stands on the laboratory's report. */
export function AssayForm({ href, facts, values, problems, csrfToken, stepKey }: AssayPageView) {
  const { assay, lots } = useWords();
  const say = assay.form;
  const errorOf = errorsOf(problems);
  const entry = <N extends keyof typeof values>(name: N) => ({ name, value: values[name], ...errorOf(name) });
  return (
    <form method="post" action={href} class="sheet">
      <h2>{facts === undefined ? assay.enter : assay.follow}</h2>
      <Csrf token={csrfToken} />
      <input type="hidden" name="step" value={stepKey} />
      <div class="row">
        <Select
          name="metal"
          label={say.metal}
          value={values.metal}
          options={(["gold", "silver"] as const).map((value) => ({ value, label: lots.metals[value] }))}
        />
        <Field kind="decimal" {...entry("permille")} label={say.permille} after="‰" required />
        <Field kind="decimal" {...entry("expanded")} label={say.expanded} hint={say.expandedHint} after="‰" />
        <Field kind="decimal" {...entry("k")} label={say.k} hint={say.kHint} />
      </div>
      <div class="row">
        <Field {...entry("laboratory")} label={say.laboratory} required maxLength={200} />
        <Field {...entry("report")} label={say.report} required maxLength={100} />
        <Field kind="date" {...entry("date")} label={say.date} required />
      </div>
      <Field {...entry("method")} label={say.method} hint={say.methodHint} required maxLength={200} />
      {facts !== undefined && (
        <Field {...entry("reason")} label={say.reason} hint={say.reasonHint} required maxLength={400} />
      )}
      <Field {...entry("by")} label={say.by} maxLength={100} />
      <p class="hint">{say.stays}</p>
      <button type="submit">{say.go}</button>
    </form>
  );
}
