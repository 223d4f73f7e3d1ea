import { AssayedMelts, type FinenessAnswer } from "../evidence/fineness.tsx";
import { decimalEntries, type FieldProblem, Problems, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Fineness } from "../plots/fineness.tsx";
import { Sentence } from "../sentence.tsx";
import { Facts, Sheet } from "../sheet.tsx";

export interface FinenessView {
  /** entries as typed */
  values: Readonly<Record<"density" | "uDensity" | "metal" | "colour", string>>;
  /** what the rest may be, by colour; each says what it allows */
  colours: readonly { value: string; label: string }[];
  problems: readonly FieldProblem[];
  answer?: FinenessAnswer;
}

/** What fineness a density leaves open, and which cause leaves how much of it. */
export function FinenessPage({ values, colours, problems, answer }: FinenessView) {
  const t = useTell();
  const entry = decimalEntries(values, problems);
  return (
    <>
      <Problems heading={t("plan-pages.problems")} problems={problems} />
      <form method="get" action="/plan/fineness" class="sheet">
        <div class="row">
          {entry("density", t("plan-pages.density"), "g/cm³", true)}
          {entry("uDensity", t("plan-pages.standard-uncertainty"), "g/cm³", true)}
          <Select
            name="metal"
            label={t("plan-pages.metal")}
            value={values.metal}
            options={[
              { value: "gold", label: t("plan-pages.gold") },
              { value: "silver", label: t("plan-pages.silver") },
            ]}
          />
          <Select name="colour" label={t("plan-pages.gold-colour")} value={values.colour} options={colours} />
          <button type="submit">{t("plan-pages.show-interval")}</button>
        </div>
        <p class="hint">{t("plan-pages.colour-is-a-range")}</p>
      </form>
      {answer && (
        <>
          <div class="sheet">
            <p role="status">
              <strong>
                <Sentence message={answer.message} />
              </strong>
            </p>
            {answer.plot && <Fineness id="fineness" {...answer.plot} />}
          </div>
          <Sheet id="causes" title={t("plan-pages.width-title")}>
            <Facts facts={answer.facts} />
            <AssayedMelts message={answer.melts} />
            <p class="hint">{t("plan-pages.not-an-assay")}</p>
          </Sheet>
        </>
      )}
    </>
  );
}
