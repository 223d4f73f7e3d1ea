import { Field } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";

const fieldNames = ["customer", "condition", "operator", "statedMass", "marks", "stones"] as const;
type FieldName = (typeof fieldNames)[number];

/** Who brought the piece, in what state, and what the customer says of it: for whoever issues reports. Folded away. */
export function ForTheReport({ typed }: { typed: Readonly<Record<string, string>> }) {
  const t = useTell();
  const entry = (name: FieldName, hint?: string, maxLength = 400) => (
    <Field
      name={name}
      id={`opening-${name}`}
      label={t(`for-the-report.fields.${name}`)}
      {...(hint === undefined ? {} : { hint })}
      value={typed[name] ?? ""}
      maxLength={maxLength}
    />
  );
  return (
    <details open={fieldNames.some((name) => (typed[name] ?? "") !== "")}>
      <summary>{t("for-the-report.summary")}</summary>
      {entry("customer", t("for-the-report.customer-hint"), 200)}
      {entry("condition", t("for-the-report.condition-hint"))}
      {entry("operator", undefined, 100)}
      <p class="hint">{t("for-the-report.theirs")}</p>
      <Field
        kind="decimal"
        name="statedMass"
        id="opening-statedMass"
        label={t("for-the-report.fields.statedMass")}
        hint={t("for-the-report.stated-mass-hint")}
        after="g"
        value={typed.statedMass ?? ""}
      />
      {entry("marks")}
      {entry("stones")}
    </details>
  );
}
