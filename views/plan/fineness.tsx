import type { FinenessAnswer } from "../evidence/fineness.tsx";
import { Field, type FieldError, Problems, Select } from "../forms.tsx";
import { Fineness } from "../plots/fineness.tsx";
import { Facts, Sheet } from "../sheet.tsx";

export interface FinenessView {
  /** entries as typed */
  values: Readonly<Record<"density" | "uDensity" | "metal" | "colour", string>>;
  /** what the rest may be, by colour; each says what it allows */
  colours: readonly { value: string; label: string }[];
  problems: readonly { fieldId: string; error: FieldError }[];
  answer?: FinenessAnswer;
}

/** What fineness a density leaves open, and which cause leaves how much of it. */
export function FinenessPage({ values, colours, problems, answer }: FinenessView) {
  const errorOf = (fieldId: string) => {
    const error = problems.find((one) => one.fieldId === fieldId)?.error;
    return error === undefined ? {} : { error };
  };
  return (
    <>
      <Problems heading="These entries need another look" problems={problems} />
      <form method="get" action="/plan/fineness" class="sheet">
        <div class="row">
          <Field
            kind="decimal"
            name="density"
            label="Density"
            after="g/cm³"
            value={values.density}
            required
            {...errorOf("density")}
          />
          <Field
            kind="decimal"
            name="uDensity"
            label="Standard uncertainty"
            after="g/cm³"
            value={values.uDensity}
            required
            {...errorOf("uDensity")}
          />
          <Select
            name="metal"
            label="Metal"
            value={values.metal}
            options={[
              { value: "gold", label: "gold" },
              { value: "silver", label: "silver" },
            ]}
          />
          <Select name="colour" label="Colour of the gold" value={values.colour} options={colours} />
          <button type="submit">Show the interval</button>
        </div>
        <p class="hint">
          A colour is a range of recipes, never one. White gold is left out: palladium and nickel break the
          series.
        </p>
      </form>
      {answer && (
        <>
          <div class="sheet">
            <p role="status">
              <strong>{answer.says}</strong>
            </p>
            {answer.plot && <Fineness id="fineness" {...answer.plot} />}
          </div>
          <Sheet id="causes" title="Where the width comes from">
            <Facts facts={answer.facts} />
            <p class="hint">
              Density is evidence, not an assay: fineness for settlement is found by a licensed laboratory
              (gold ISO 11426, silver ISO 11427).
            </p>
          </Sheet>
        </>
      )}
    </>
  );
}
