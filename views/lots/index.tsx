import { WettingCaution } from "../cautions.tsx";
import { Csrf, Field, type FieldError, Problems, Select, UnitSelect } from "../forms.tsx";
import { Rows } from "../sheet.tsx";
import { useWords } from "../words/spoken.ts";

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
  const say = useWords().lots;
  const { opening } = say;
  const typed = (name: string) => {
    const error = problems.find(({ fieldId }) => fieldId === name)?.error;
    return { name, value: values[name] ?? "", ...(error === undefined ? {} : { error }) };
  };
  return (
    <>
      <Rows
        caption={say.caption}
        empty={say.empty}
        columns={[
          { head: say.lot },
          { head: say.opened },
          { head: say.pieces, number: true },
          { head: say.gross, number: true },
          { head: say.state },
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
        <h2>{opening.heading}</h2>
        <Problems heading={opening.problems} problems={problems} />
        <Csrf token={csrfToken} />
        <input type="hidden" name="step" value={stepKey} />
        <Field {...typed("name")} label={opening.name} required shortcut="n" />
        <Field {...typed("from")} label={opening.from} hint={opening.fromHint} />
        <Field
          kind="decimal"
          {...typed("gross")}
          label={opening.gross}
          hint={opening.grossHint}
          after={
            <UnitSelect
              name="grossUnit"
              label={opening.grossUnit}
              units={units}
              value={values.grossUnit ?? "g"}
            />
          }
        />
        <Field kind="whole" {...typed("count")} label={opening.count} />
        <Select
          name="claim"
          label={opening.claim}
          empty={opening.notSaid}
          value={values.claim ?? ""}
          options={claims.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <p class="hint">
          {opening.list} <a href="/imports">{opening.listLink}</a>.
        </p>
        <button type="submit">{opening.go}</button>
      </form>
      <WettingCaution />
    </>
  );
}
