import { TakeOver } from "../forms/take-over.tsx";
import { Csrf, decimalEntries, Field, type FieldError, Problems, Select } from "../forms.tsx";
import { Rows, Sheet } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useLocale, useWords } from "../words/spoken.ts";
import { toldValue } from "../words/told.ts";

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
  const locale = useLocale();
  const say = useWords().specifications;
  const fileError = problems.find(({ fieldId }) => fieldId === "json-file")?.error;
  const entry = decimalEntries(values, problems);
  return (
    <>
      <form method="post" action="/specifications" class="sheet">
        <h2>{say.addOwn}</h2>
        <Problems heading={say.problems} problems={problems} />
        <Csrf token={csrfToken} />
        <input type="hidden" name="step" value={stepKey} />
        <div class="row">
          <Field name="name" label={say.name} value={values.name ?? ""} required />
          <Select
            name="metal"
            label={say.madeOf}
            value={values.metal ?? ""}
            empty={say.choose}
            options={claims.map(({ id, name }) => ({ value: id, label: toldValue(name, locale) }))}
          />
        </div>
        <div class="row">
          {entry("mass", say.mass, "g", true)}
          {entry("tolerance", say.tolerance, "g")}
          {entry("fineness", say.fineness, "‰", true)}
          {entry("fine", say.fineMass, "g")}
        </div>
        <div class="row">
          {entry("diameter", say.diameter, "mm")}
          {entry("thickness", say.rimThickness, "mm")}
        </div>
        <Field name="source" label={say.sourceOfValues} value={values.source ?? ""} required />
        <p class="hint">{say.fineHint}</p>
        <button type="submit">{say.add}</button>
      </form>
      <Sheet id="file" title={say.file}>
        <p>
          <a href="/specifications.json" download>
            {say.ownAsFile}
          </a>
        </p>
        <TakeOver
          action="/specifications/import"
          csrfToken={csrfToken}
          words={{
            choose: say.takeOverJson,
            paste: say.takeOverPasted,
            hint: say.takeOverHint,
            takeOver: say.takeOver,
          }}
          pasted={values.file ?? ""}
          {...(fileError === undefined ? {} : { error: fileError })}
        />
      </Sheet>
      <Rows
        caption={say.caption}
        empty={say.none}
        columns={[
          { head: say.piece },
          { head: say.metal },
          { head: say.massG, number: true },
          { head: say.toleranceG, number: true },
          { head: say.finenessPermille, number: true },
          { head: say.sizeMm },
          { head: say.source },
        ]}
        rows={rows.map(({ id, name, metal, mass, tolerance, fineness, size, source }) => ({
          key: id,
          cells: [
            toldValue(name, locale),
            toldValue(metal, locale),
            mass,
            toldValue(tolerance, locale),
            fineness,
            size,
            <Told key="s" says={source} />,
          ],
        }))}
      />
    </>
  );
}
