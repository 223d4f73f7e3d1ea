import { Field, type FieldError, Problems, Select } from "../forms.tsx";
import { Sheet } from "../sheet.tsx";
import { type EvidenceDoor, EvidenceForm } from "./form.tsx";

/** Mass and size against what the piece is meant to be. */
export interface SizeView extends EvidenceDoor {
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
  /** true before the first dry reading: the form asks for the mass */
  asksMass: boolean;
  stepKey: string;
}

export function SizeSheet(view: SizeView) {
  const { specifications, values, problems, made, doubt, asksMass, stepKey } = view;
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
              <EvidenceForm door={view} path={`/${id}/voiding`}>
                <Field name="reason" id={`reason-${id}`} label="Why" required />
                <button type="submit" class="plain">
                  Set aside
                </button>
              </EvidenceForm>
            </details>
          )}
        </div>
      ))}
      {doubt !== undefined && (
        <p>
          <strong>Note:</strong> {doubt}
        </p>
      )}
      <EvidenceForm door={view}>
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
          {asksMass && entry("size-mass", "Mass", "g", true)}
          {asksMass && entry("size-mass-within", "give or take", "g", true)}
          {entry("size-diameter", "Diameter", "mm")}
          {entry("size-thickness", "Thickness at the rim", "mm")}
          {entry("size-within", "give or take", "mm", true)}
        </div>
        <p class="hint">
          {asksMass
            ? "No dry reading was taken yet, so the mass is typed. "
            : "The mass is the dry reading. "}
          Diameter and thickness may be left out; together they also say how much metal the outline can hold.
        </p>
        <button type="submit">Compare</button> <a href="/specifications">Specifications and your own</a>
      </EvidenceForm>
    </Sheet>
  );
}
