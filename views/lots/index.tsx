import { WettingCaution } from "../cautions.tsx";
import { Csrf, Field, type FieldProblem, Problems, Select, UnitSelect } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Rows } from "../sheet.tsx";
import { nothingClaimed } from "./view.ts";

export interface LotRow {
  id: string;
  name: string;
  opened: string;
  pieces: number;
  gross: string;
  /** open, closed, paid: in words */
  state: string;
}

export interface LotsPage {
  lots: readonly LotRow[];
  claims: readonly { id: string; name: string }[];
  units: readonly string[];
  /** entries as typed, when they were sent back */
  values: Readonly<Record<string, string>>;
  problems: readonly FieldProblem[];
  csrfToken: string;
  stepKey: string;
}

/** All lots, and opening a new one. */
export function LotsIndex({ lots, claims, units, values, problems, csrfToken, stepKey }: LotsPage) {
  const t = useTell();
  const typed = (name: string) => {
    const error = problems.find(({ fieldId }) => fieldId === name)?.error;
    return { name, value: values[name] ?? "", ...(error === undefined ? {} : { error }) };
  };
  return (
    <>
      <Rows
        caption={t("lots.caption")}
        empty={t("lots.empty")}
        columns={[
          { head: t("lots.lot") },
          { head: t("lots.opened") },
          { head: t("lots.pieces"), number: true },
          { head: t("lots.gross"), number: true },
          { head: t("lots.state") },
        ]}
        rows={lots.map(({ id, name, opened, pieces, gross, state }) => ({
          key: id,
          cells: [
            <a key="a" href={`/lots/${id}`}>
              {name}
            </a>,
            opened,
            `${pieces}`,
            gross,
            state,
          ],
        }))}
      />
      <p>
        <a href="/melts">{t("melts.title")}</a>
      </p>
      <form method="post" action="/lots" class="sheet">
        <h2>{t("lots.opening.heading")}</h2>
        <Problems heading={t("lots.opening.problems")} problems={problems} />
        <Csrf token={csrfToken} />
        <input type="hidden" name="step" value={stepKey} />
        <Field {...typed("name")} label={t("lots.opening.name")} required shortcut="n" />
        <Field {...typed("from")} label={t("lots.opening.from")} hint={t("lots.opening.from-hint")} />
        <Field
          kind="decimal"
          {...typed("gross")}
          label={t("lots.opening.gross")}
          hint={t("lots.opening.gross-hint")}
          after={
            <UnitSelect
              name="grossUnit"
              label={t("lots.opening.gross-unit")}
              units={units}
              value={values.grossUnit ?? "g"}
            />
          }
        />
        <Field kind="whole" {...typed("count")} label={t("lots.opening.count")} />
        <Select
          name="claim"
          label={t("lots.opening.claim")}
          empty={t("lots.opening.ask-each")}
          value={values.claim ?? ""}
          options={[
            { value: nothingClaimed, label: t("lots.step.nothing-claimed") },
            ...claims.map(({ id, name }) => ({ value: id, label: name })),
          ]}
        />
        <p class="hint">
          {t("lots.opening.list")} <a href="/imports">{t("lots.opening.list-link")}</a>.
        </p>
        <button type="submit">{t("lots.opening.go")}</button>
      </form>
      <WettingCaution />
    </>
  );
}
