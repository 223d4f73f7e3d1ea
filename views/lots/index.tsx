import { Csrf, Field, Select, UnitSelect } from "../forms.tsx";
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
  csrfToken: string;
  stepKey: string;
}

/** All lots, and opening a new one. */
export function LotsIndex({ lots, claims, units, csrfToken, stepKey }: LotsPage) {
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
        <Csrf token={csrfToken} />
        <input type="hidden" name="step" value={stepKey} />
        <Field name="name" label="Name or ticket of the lot" required shortcut="n" />
        <Field name="from" label="Brought by" hint="a ticket is enough; no person need be named" />
        <Field
          kind="decimal"
          name="gross"
          label="Gross mass of the whole lot"
          hint="weighed before sorting; the sum of the pieces is held against it"
          after={<UnitSelect name="grossUnit" label="Unit of the gross mass" units={units} />}
        />
        <Field kind="whole" name="count" label="Number of pieces, counted" />
        <Select
          name="claim"
          label="Mostly said to be"
          empty="not said"
          options={claims.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <button type="submit">Open the lot</button>
      </form>
    </>
  );
}
