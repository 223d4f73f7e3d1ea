import { decimalEntries, Field, type FieldError, Problems, Select } from "../forms.tsx";
import { Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useWords } from "../words/spoken.ts";
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
  const say = useWords().evidence;
  const entry = decimalEntries(values, problems);
  return (
    <Sheet id="size" title={say.sizeTitle}>
      <Problems heading={say.problems} problems={problems} />
      {made.length === 0 && <p>{say.notCompared}</p>}
      {made.map(({ id, specification, source, when, lines, setAside }) => (
        <div key={id}>
          <p>
            <strong>{specification}</strong> ({when})
            {setAside !== undefined && `, ${say.setAsideWith(setAside)}`}
          </p>
          <ul>
            {lines.map((line) => (
              <li key={line}>
                {setAside === undefined ? (
                  <Told says={line} />
                ) : (
                  <s>
                    <Told says={line} />
                  </s>
                )}
              </li>
            ))}
          </ul>
          <p class="hint">
            <Told says={source} />
          </p>
          {setAside === undefined && (
            <details>
              <summary>
                {say.setAside} <span class="unseen">{specification}</span>
              </summary>
              <EvidenceForm door={view} path={`/${id}/voiding`}>
                <Field name="reason" id={`reason-${id}`} label={say.why} required />
                <button type="submit" class="plain">
                  {say.setAside}
                </button>
              </EvidenceForm>
            </details>
          )}
        </div>
      ))}
      {doubt !== undefined && (
        <p>
          <strong>{say.note}</strong> <Told says={doubt} />
        </p>
      )}
      <EvidenceForm door={view}>
        <input type="hidden" name="step" value={`${stepKey}-size`} />
        <input type="hidden" name="kind" value="size" />
        <div class="row">
          <Select
            name="size-specification"
            label={say.meantToBe}
            options={specifications}
            value={values["size-specification"] ?? ""}
            empty={say.choose}
          />
          {asksMass && entry("size-mass", say.mass, "g", true)}
          {asksMass && entry("size-mass-within", say.plusOrMinus, "g", true)}
          {entry("size-diameter", say.diameter, "mm")}
          {entry("size-thickness", say.rimThickness, "mm")}
          {entry("size-within", say.plusOrMinus, "mm", true)}
        </div>
        <p class="hint">
          {asksMass ? say.massTyped : say.massIsDry} {say.sizeHint}
        </p>
        <button type="submit">{say.compare}</button> <a href="/specifications">{say.toSpecifications}</a>
      </EvidenceForm>
    </Sheet>
  );
}
