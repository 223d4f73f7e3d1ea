import { Field, Select, UnitSelect } from "../forms.tsx";
import { useWords } from "../words/spoken.ts";
import { LotForm } from "./form.tsx";
import type { LotView } from "./view.ts";

/** A piece that comes back to the pan after it was wet. */
export function WeighAgain(lot: LotView) {
  const say = useWords().lots.again;
  return (
    <details>
      <summary>{say.open}</summary>
      <p class="hint">{say.lead}</p>
      <LotForm lot={lot} to="again">
        <Field name="again" scan label={say.ticket} required />
        <Field
          kind="decimal"
          name="againTyped"
          weight
          label={say.reading}
          after={
            <UnitSelect name="unit" id="again-unit" label={say.unit} units={lot.units} value={lot.unit} />
          }
        />
        <button type="submit">{say.keep}</button>{" "}
        {lot.live !== undefined && (
          <button type="submit" name="take" value="yes" data-needs-live>
            {say.take}
          </button>
        )}
      </LotForm>
    </details>
  );
}

/** Flags are set and cleared with a reason; every one stays in the ledger. */
export function FlagPiece(lot: LotView) {
  const say = useWords().lots.flagging;
  return (
    <details>
      <summary>{say.open}</summary>
      <LotForm lot={lot} to="flags">
        <Field name="flagTicket" scan label={say.ticket} required />
        <Select
          name="flag"
          label={say.flag}
          empty="–"
          options={lot.flagNames.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <Field name="own" label={say.own} hint={say.ownHint} maxLength={100} />
        <Select
          name="deed"
          label={say.what}
          value="set"
          options={[
            { value: "set", label: say.set },
            { value: "clear", label: say.clear },
          ]}
        />
        <Field name="reason" label={say.reason} hint={say.stays} required maxLength={400} />
        <Field name="by" label={say.by} maxLength={100} />
        <button type="submit">{say.go}</button>
      </LotForm>
    </details>
  );
}

/** Ends the lot; its totals become an entry. */
export function CloseLot(lot: LotView) {
  const say = useWords().lots.closing;
  return (
    <details>
      <summary>{say.open}</summary>
      <p class="hint">{say.lead}</p>
      <LotForm lot={lot} to="closing">
        <Field name="note" id="closing-note" label={say.note} maxLength={400} />
        <Field name="by" id="closing-by" label={say.by} maxLength={100} />
        <button type="submit">{say.go}</button>
      </LotForm>
    </details>
  );
}
