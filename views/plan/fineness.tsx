import { type FinenessAnswer, HouseMelts } from "../evidence/fineness.tsx";
import { decimalEntries, type FieldError, Problems, Select } from "../forms.tsx";
import { Fineness } from "../plots/fineness.tsx";
import { Sheet, ToldFacts } from "../sheet.tsx";
import { Told } from "../told.tsx";
import { useLocale, useWords } from "../words/spoken.ts";
import { toldValue } from "../words/told.ts";

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
  const locale = useLocale();
  const say = useWords().planPages;
  const entry = decimalEntries(values, problems);
  return (
    <>
      <Problems heading={say.problems} problems={problems} />
      <form method="get" action="/plan/fineness" class="sheet">
        <div class="row">
          {entry("density", say.density, "g/cm³", true)}
          {entry("uDensity", say.standardUncertainty, "g/cm³", true)}
          <Select
            name="metal"
            label={say.metal}
            value={values.metal}
            options={[
              { value: "gold", label: say.gold },
              { value: "silver", label: say.silver },
            ]}
          />
          <Select
            name="colour"
            label={say.goldColour}
            value={values.colour}
            options={colours.map(({ value, label }) => ({ value, label: toldValue(label, locale) }))}
          />
          <button type="submit">{say.showInterval}</button>
        </div>
        <p class="hint">{say.colourIsARange}</p>
      </form>
      {answer && (
        <>
          <div class="sheet">
            <p role="status">
              <strong>
                <Told says={answer.says} />
              </strong>
            </p>
            {answer.plot && <Fineness id="fineness" {...answer.plot} />}
          </div>
          <Sheet id="causes" title={say.widthTitle}>
            <ToldFacts facts={answer.facts} />
            <HouseMelts says={answer.house} />
            <p class="hint">{say.notAnAssay}</p>
          </Sheet>
        </>
      )}
    </>
  );
}
