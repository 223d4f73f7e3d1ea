import { WettingCaution } from "../cautions.tsx";
import { Csrf, Field, type FieldError, Problems, Select, UnitSelect } from "../forms.tsx";
import { Rows } from "../sheet.tsx";

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
  problems: readonly { fieldId: string; error: FieldError }[];
  csrfToken: string;
  stepKey: string;
}

/** All lots, and opening a new one. */
export function LotsIndex({ lots, claims, units, values, problems, csrfToken, stepKey }: LotsPage) {
  const typed = (name: string) => {
    const error = problems.find(({ fieldId }) => fieldId === name)?.error;
    return { name, value: values[name] ?? "", ...(error === undefined ? {} : { error }) };
  };
  return (
    <>
      <Rows
        caption="Lots, newest first"
        empty="No lot is open. Open one below before the first piece is weighed."
        columns={[
          { head: "Lot" },
          { head: "Opened" },
          { head: "Pieces", number: true },
          { head: "Gross", number: true },
          { head: "State" },
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
      <form method="post" action="/lots" class="sheet">
        <h2>Open a lot</h2>
        <Problems heading="This entry needs another look" problems={problems} />
        <Csrf token={csrfToken} />
        <input type="hidden" name="step" value={stepKey} />
        <Field {...typed("name")} label="Name or ticket of the lot" required shortcut="n" />
        <Field {...typed("from")} label="Brought by" hint="a ticket is enough; no person need be named" />
        <Field
          kind="decimal"
          {...typed("gross")}
          label="Gross mass of the whole lot"
          hint="weighed before sorting; the sum of the pieces is held against it"
          after={
            <UnitSelect
              name="grossUnit"
              label="Unit of the gross mass"
              units={units}
              value={values.grossUnit ?? "g"}
            />
          }
        />
        <Field kind="whole" {...typed("count")} label="Number of pieces, counted" />
        <Select
          name="claim"
          label="Mostly said to be"
          empty="not said"
          value={values.claim ?? ""}
          options={claims.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <button type="submit">Open the lot</button>
      </form>
      <WettingCaution />
    </>
  );
}
