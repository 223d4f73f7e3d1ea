import { Csrf, errorsOf, Field, type FieldProblem, Problems } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Caution, Rows, Sheet } from "../sheet.tsx";

export interface NamesView {
  /** what is looked for */
  q: string;
  names: readonly { reference: string; name: string; since: string }[];
  /** how many are kept in all, and how many were erased */
  kept: number;
  erased: readonly { when: string; by: string; reason: string }[];
  values: Readonly<Record<string, string>>;
  problems: readonly FieldProblem[];
  csrfToken: string;
}

/** Names of customers, which the ledger keeps apart, and erasing one. */
export function NamesPage({ q, names, kept, erased, values, problems, csrfToken }: NamesView) {
  const t = useTell();
  const errorOf = errorsOf(problems);
  return (
    <>
      <Problems heading={t("retention.refused")} problems={problems} />
      <p>{t("names.lead", { kept })}</p>
      <Caution title={t("names.before")}>
        <p>{t("names.law")}</p>
        <p>{t("names.remains")}</p>
      </Caution>
      <form method="get" action="/settings/names" class="row">
        <Field name="q" label={t("names.find")} value={q} />
        <button type="submit">{t("names.find-go")}</button>
      </form>
      {names.map(({ reference, name, since }) => (
        <form key={reference} method="post" action="/settings/names" class="sheet">
          <h2>{name}</h2>
          <p class="hint">{t("names.since", { since })}</p>
          <Csrf token={csrfToken} />
          <input type="hidden" name="reference" value={reference} />
          <input type="hidden" name="q" value={q} />
          <Field
            name="by"
            id={`by-${reference}`}
            label={t("payout.terms.by")}
            value={values.reference === reference ? (values.by ?? "") : ""}
            required
            maxLength={100}
            {...(values.reference === reference ? errorOf("by") : {})}
          />
          <Field
            name="reason"
            id={`reason-${reference}`}
            label={t("settlement.reason")}
            value={values.reference === reference ? (values.reason ?? "") : ""}
            required
            maxLength={400}
            {...(values.reference === reference ? errorOf("reason") : {})}
          />
          <button type="submit" class="plain">
            {t("names.erase")}
          </button>
        </form>
      ))}
      {q !== "" && names.length === 0 && <p>{t("names.none")}</p>}
      {erased.length > 0 && (
        <Sheet id="erased" title={t("names.erased")}>
          <Rows
            caption={t("names.erased")}
            empty=""
            columns={[
              { head: t("names.when") },
              { head: t("payout.terms.by") },
              { head: t("settlement.reason") },
            ]}
            rows={erased.map(({ when, by, reason }) => ({ key: when, cells: [when, by, reason] }))}
          />
        </Sheet>
      )}
    </>
  );
}
