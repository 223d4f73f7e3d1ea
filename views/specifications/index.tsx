import { Csrf, Field, type FieldError, Problems, Select } from "../forms.tsx";
import { Rows } from "../sheet.tsx";

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
  problems: readonly { fieldId: string; error: FieldError }[];
  csrfToken: string;
  stepKey: string;
}

/** What pieces are meant to be: laws and conventions, and what the owner added. */
export function Specifications({ rows, claims, values, problems, csrfToken, stepKey }: SpecificationsView) {
  const entry = (name: string, label: string, after: string, required = false) => {
    const error = problems.find(({ fieldId }) => fieldId === name)?.error;
    return (
      <Field
        kind="decimal"
        name={name}
        label={label}
        after={after}
        value={values[name] ?? ""}
        required={required}
        {...(error === undefined ? {} : { error })}
      />
    );
  };
  return (
    <>
      <form method="post" action="/specifications" class="sheet">
        <h2>Add one of your own</h2>
        <Problems heading="This entry needs another look" problems={problems} />
        <Csrf token={csrfToken} />
        <input type="hidden" name="step" value={stepKey} />
        <div class="row">
          <Field name="name" label="Name" value={values.name ?? ""} required />
          <Select
            name="metal"
            label="Made of"
            value={values.metal ?? ""}
            empty="choose"
            options={claims.map(({ id, name }) => ({ value: id, label: name }))}
          />
        </div>
        <div class="row">
          {entry("mass", "Mass", "g", true)}
          {entry("tolerance", "Tolerance of one piece", "g")}
          {entry("fineness", "Fineness", "‰", true)}
          {entry("fine", "Fine mass, where stated", "g")}
        </div>
        <div class="row">
          {entry("diameter", "Diameter", "mm")}
          {entry("thickness", "Thickness at the rim", "mm")}
        </div>
        <Field name="source" label="Where the values come from" value={values.source ?? ""} required />
        <p class="hint">
          When a fine mass is stated it is held against mass × fineness; if they do not go together, nothing
          is kept.
        </p>
        <button type="submit">Add</button> <a href="/specifications.json">Your own as a file</a>
      </form>
      <Rows
        caption="Specifications, your own first"
        empty="None."
        columns={[
          { head: "Piece" },
          { head: "Metal" },
          { head: "Mass, g", number: true },
          { head: "Tolerance, g", number: true },
          { head: "Fineness, ‰", number: true },
          { head: "Size, mm" },
          { head: "Source" },
        ]}
        rows={rows.map(({ id, name, metal, mass, tolerance, fineness, size, source }) => ({
          key: id,
          cells: [name, metal, mass, tolerance, fineness, size, source],
        }))}
      />
    </>
  );
}
