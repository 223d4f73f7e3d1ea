import { Field } from "../forms.tsx";
import { useWords } from "../words/spoken.ts";

/** Who brought the piece, in what state, and what the customer says of it: for whoever issues reports. Folded away. */
export function ForTheReport({ typed }: { typed: Readonly<Record<string, string>> }) {
  const say = useWords().forTheReport;
  const entry = (name: keyof typeof say.fields, hint?: string, maxLength = 400) => (
    <Field
      name={name}
      id={`opening-${name}`}
      label={say.fields[name]}
      {...(hint === undefined ? {} : { hint })}
      value={typed[name] ?? ""}
      maxLength={maxLength}
    />
  );
  return (
    <details open={Object.keys(say.fields).some((name) => (typed[name] ?? "") !== "")}>
      <summary>{say.summary}</summary>
      {entry("customer", say.customerHint, 200)}
      {entry("condition", say.conditionHint)}
      {entry("operator", undefined, 100)}
      <p class="hint">{say.theirs}</p>
      <Field
        kind="decimal"
        name="statedMass"
        id="opening-statedMass"
        label={say.fields.statedMass}
        hint={say.statedMassHint}
        after="g"
        value={typed.statedMass ?? ""}
      />
      {entry("marks")}
      {entry("stones")}
    </details>
  );
}
