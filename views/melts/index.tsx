import { massUnits } from "../../calibration/units.ts";
import { Check, Csrf, errorsOf, Field, Problems, UnitSelect } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Rows } from "../sheet.tsx";
import type { MeltsPage } from "./view.ts";

/** All melts, and making a new one of whole lots. */
export function MeltsIndex({ melts, lots, values, problems, csrfToken, stepKey }: MeltsPage) {
  const t = useTell();
  const errorOf = errorsOf(problems);
  const entry = (name: string) => ({ name, value: values[name] ?? "", ...errorOf(name) });
  return (
    <>
      <Rows
        caption={t("melts.caption")}
        empty={t("melts.empty")}
        columns={[
          { head: t("melts.melt") },
          { head: t("melts.made") },
          { head: t("melts.lots") },
          { head: t("melts.before"), number: true },
          { head: t("lots.state") },
        ]}
        rows={melts.map(({ id, name, made, lots: of, before, state }) => ({
          key: id,
          cells: [
            <a key="a" href={`/melts/${id}`}>
              {name}
            </a>,
            made,
            of,
            before,
            state,
          ],
        }))}
      />
      <form method="post" action="/melts" class="sheet">
        <h2>{t("melts.make")}</h2>
        <p class="hint">{t("melts.make-lead")}</p>
        <Problems heading={t("payout.problems")} problems={problems} />
        <Csrf token={csrfToken} />
        <input type="hidden" name="step" value={stepKey} />
        <Field {...entry("name")} label={t("melts.name")} required maxLength={200} />
        <fieldset id="lots">
          <legend>{t("melts.lots")}</legend>
          {lots.length === 0 && <p>{t("melts.no-lots")}</p>}
          {lots.map(({ id, name }) => (
            <Check key={id} name={`lot-${id}`} label={name} checked={values[`lot-${id}`] !== undefined} />
          ))}
        </fieldset>
        <Field
          kind="decimal"
          {...entry("before")}
          label={t("melts.before")}
          required
          after={
            <UnitSelect
              name="beforeUnit"
              label={t("melts.unit")}
              units={massUnits}
              value={values.beforeUnit ?? "g"}
            />
          }
        />
        <div class="row">
          <Field {...entry("by")} label={t("payout.terms.by")} required maxLength={100} />
          <Field
            {...entry("reason")}
            label={t("settlement.reason")}
            hint={t("melts.reason-hint")}
            maxLength={400}
          />
        </div>
        <button type="submit">{t("melts.make-go")}</button>
      </form>
    </>
  );
}
