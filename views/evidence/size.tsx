import { Csrf, Field, type FieldError, Problems, Select } from "../forms.tsx";
import { Sheet } from "../sheet.tsx";

/** Mass and size against what the piece is meant to be. */
export interface SizeView {
  action: string;
  specifications: readonly { value: string; label: string }[];
  values: Readonly<Record<string, string>>;
  problems: readonly { fieldId: string; error: FieldError }[];
  made: readonly {
    id: string;
    specification: string;
    source: string;
    when: string;
    /** each quantity in a sentence */
    lines: readonly string[];
    setAside?: string;
  }[];
  /** outline against displaced volume, when they do not go together */
  doubt?: string;
  csrfToken: string;
  stepKey: string;
}

export function SizeSheet({
  action,
  specifications,
  values,
  problems,
  made,
  doubt,
  csrfToken,
  stepKey,
}: SizeView) {
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
    <Sheet id="size" title="Mass and size against a specification">
      <Problems heading="This entry needs another look" problems={problems} />
      {made.length === 0 && <p>Not compared.</p>}
      {made.map(({ id, specification, source, when, lines, setAside }) => (
        <div key={id}>
          <p>
            <strong>{specification}</strong> ({when}){setAside !== undefined && `, set aside: ${setAside}`}
          </p>
          <ul>
            {lines.map((line) => (
              <li key={line}>{setAside === undefined ? line : <s>{line}</s>}</li>
            ))}
          </ul>
          <p class="hint">{source}</p>
          {setAside === undefined && (
            <details>
              <summary>
                Set aside <span class="unseen">{specification}</span>
              </summary>
              <form method="post" action={`${action}/${id}/voiding`}>
                <Csrf token={csrfToken} />
                <Field name="reason" id={`reason-${id}`} label="Why" required />
                <button type="submit" class="plain">
                  Set aside
                </button>
              </form>
            </details>
          )}
        </div>
      ))}
      {doubt !== undefined && (
        <p>
          <strong>Note:</strong> {doubt}
        </p>
      )}
      <form method="post" action={action}>
        <Csrf token={csrfToken} />
        <input type="hidden" name="step" value={`${stepKey}-size`} />
        <input type="hidden" name="kind" value="size" />
        <div class="row">
          <Select
            name="size-specification"
            label="Meant to be"
            options={specifications}
            value={values["size-specification"] ?? ""}
            empty="choose"
          />
          {entry("size-diameter", "Diameter", "mm")}
          {entry("size-thickness", "Thickness at the rim", "mm")}
          {entry("size-within", "give or take", "mm", true)}
        </div>
        <p class="hint">
          The mass is the dry reading of the record. Diameter and thickness may be left out; together they
          also say how much metal the outline can hold.
        </p>
        <button type="submit">Compare</button> <a href="/specifications">Specifications and your own</a>
      </form>
    </Sheet>
  );
}
