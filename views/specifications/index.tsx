import { TakeOver } from "../forms/take-over.tsx";
import { Csrf, decimalEntries, Field, type FieldProblem, Problems, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Fold, Rows } from "../sheet.tsx";

export interface SpecificationsView {
  rows: readonly {
    id: string;
    name: string;
    metal: string;
    mass: string;
    tolerance: string;
    fineness: string;
    size: string;
    source: string;
  }[];
  claims: readonly { id: string; name: string }[];
  values: Readonly<Record<string, string>>;
  problems: readonly FieldProblem[];
  csrfToken: string;
  stepKey: string;
}

/** What pieces are meant to be: laws and conventions, and what the owner added. */
export function Specifications({ rows, claims, values, problems, csrfToken, stepKey }: SpecificationsView) {
  const t = useTell();
  const fileError = problems.find(({ fieldId }) => fieldId === "json-file")?.error;
  const entry = decimalEntries(values, problems);
  return (
    <>
      <Groups rows={rows} />
      <Fold id="add" title={t("specifications.add-own")} open={problems.length > 0 && !fileError}>
        <form method="post" action="/specifications">
          <Problems heading={t("specifications.problems")} problems={problems} />
          <Csrf token={csrfToken} />
          <input type="hidden" name="step" value={stepKey} />
          <div class="row">
            <Field name="name" label={t("specifications.name")} value={values.name ?? ""} required />
            <Select
              name="metal"
              label={t("specifications.made-of")}
              value={values.metal ?? ""}
              empty={t("specifications.choose")}
              options={claims.map(({ id, name }) => ({ value: id, label: name }))}
            />
          </div>
          <div class="row">
            {entry("mass", t("specifications.mass"), "g", true)}
            {entry("tolerance", t("specifications.tolerance"), "g")}
            {entry("fineness", t("specifications.fineness"), "‰", true)}
            {entry("fine", t("specifications.fine-mass"), "g")}
          </div>
          <div class="row">
            {entry("leastCurrent", t("specifications.least-current"), "g")}
            {entry("diameter", t("specifications.diameter"), "mm")}
            {entry("thickness", t("specifications.rim-thickness"), "mm")}
          </div>
          <Field
            name="source"
            label={t("specifications.source-of-values")}
            value={values.source ?? ""}
            required
          />
          <p class="hint">{t("specifications.fine-hint")}</p>
          <p class="hint">{t("specifications.least-current-hint")}</p>
          <button type="submit">{t("specifications.add")}</button>
        </form>
      </Fold>
      <Fold id="file" title={t("specifications.file")} open={fileError !== undefined}>
        <p>
          <a class="button plain" href="/specifications.json" download>
            {t("specifications.own-as-file")}
          </a>
        </p>
        <TakeOver
          action="/specifications/import"
          csrfToken={csrfToken}
          words={{
            choose: t("specifications.take-over-json"),
            paste: t("specifications.take-over-pasted"),
            hint: t("specifications.take-over-hint"),
            takeOver: t("specifications.take-over"),
          }}
          pasted={values.file ?? ""}
          {...(fileError === undefined ? {} : { error: fileError })}
        />
      </Fold>
    </>
  );
}

/** What is listed, the pieces of one metal together, opened on demand. */
function Groups({ rows }: Pick<SpecificationsView, "rows">) {
  const t = useTell();
  const metals = [...new Set(rows.map(({ metal }) => metal))];
  if (metals.length === 0) return <p>{t("specifications.none")}</p>;
  return (
    <>
      {metals.map((metal) => {
        const of = rows.filter((row) => row.metal === metal);
        return (
          <Fold key={metal} id={`of-${of[0]!.id}`} title={metal} note={of.length}>
            <Listed metal={metal} rows={of} />
          </Fold>
        );
      })}
    </>
  );
}

function Listed({ metal, rows }: Pick<SpecificationsView, "rows"> & { metal: string }) {
  const t = useTell();
  return (
    <Rows
      caption={metal}
      empty=""
      columns={[
        { head: t("specifications.piece") },
        { head: t("specifications.mass-g"), number: true },
        { head: t("specifications.tolerance-g"), number: true },
        { head: t("specifications.fineness-permille"), number: true },
        { head: t("specifications.size-mm") },
        { head: t("specifications.source") },
      ]}
      rows={rows.map(({ id, name, mass, tolerance, fineness, size, source }) => ({
        key: id,
        cells: [name, mass, tolerance, fineness, size, <Sentence key="s" message={source} />],
      }))}
    />
  );
}
