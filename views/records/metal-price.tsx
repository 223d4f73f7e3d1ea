import { BuyingCaution } from "../cautions.tsx";
import { errorsOf, Field, type FieldError, Problems, Select } from "../forms.tsx";
import { Facts, Sheet } from "../sheet.tsx";
import { useLocale, useWords } from "../words/spoken.ts";
import { toldValue } from "../words/told.ts";

export const metalPriceFields = ["metal", "colour", "price", "currency", "per", "source", "at"] as const;

export interface MetalPriceView {
  record: { href: string; ticket: string; density: string; mass: string };
  action: string;
  values: Readonly<Record<(typeof metalPriceFields)[number], string>>;
  colours: readonly { value: string; label: string }[];
  problems: readonly { fieldId: string; error: FieldError }[];
  /** in words: the record is voided, or disagrees with its claim */
  warnings: readonly string[];
  answer?:
    | { range: string; condition: string; facts: readonly (readonly [name: string, value: string])[] }
    | { impossible: string };
  /** in words: what else has this density */
  alive: string;
}

/** Fine mass of one piece times a price, low to high, with what that leaves out. */
export function MetalPrice(view: MetalPriceView) {
  const { metalPrice: say, records } = useWords();
  const { record, problems, warnings, answer, alive } = view;
  return (
    <>
      <p>
        <a href={record.href}>{records.recordOf(record.ticket)}</a>: {record.density}, {record.mass}.
      </p>
      <Problems heading={say.problems} problems={problems} />
      {warnings.map((one) => (
        <p class="problems" key={one}>
          <strong>{one}</strong>
        </p>
      ))}
      <Form {...view} />
      {answer && (
        <Sheet id="metal-price" title={say.heading}>
          {"impossible" in answer ? (
            <p role="status">{answer.impossible}</p>
          ) : (
            <>
              <p class="result-value" role="status">
                {answer.range}
              </p>
              <p>
                <strong>{answer.condition}.</strong> {say.notValuation}
              </p>
              <Facts facts={answer.facts} />
            </>
          )}
        </Sheet>
      )}
      <Sheet id="meaning" title={say.meaning}>
        {answer === undefined && <p>{say.notValuation}</p>}
        <p>{say.deductions}</p>
        <p>
          {say.notProof} {alive} {say.hollow}
        </p>
        <p>
          <a href={`${record.href}/evidence`}>{say.narrow}</a>
        </p>
      </Sheet>
      <BuyingCaution />
    </>
  );
}

function Form({ action, values, colours, problems }: MetalPriceView) {
  const { metalPrice: say, payout, lots } = useWords();
  const locale = useLocale();
  const errorOf = errorsOf(problems);
  const entry = <N extends keyof typeof values>(name: N) => ({ name, value: values[name], ...errorOf(name) });
  return (
    <form method="get" action={action} class="sheet">
      <p class="hint">{say.lead}</p>
      <div class="row">
        <Select
          name="metal"
          label={say.ifItIs}
          value={values.metal}
          options={(["gold", "silver"] as const).map((value) => ({ value, label: lots.metals[value] }))}
        />
        <Select
          name="colour"
          label={say.colour}
          value={values.colour}
          options={colours.map(({ value, label }) => ({ value, label: toldValue(label, locale) }))}
        />
      </div>
      <div class="row">
        <Field kind="decimal" {...entry("price")} label={payout.price} required />
        <Field {...entry("currency")} label={payout.currency} hint={payout.currencyHint} required />
        <Select
          name="per"
          label={payout.per}
          value={values.per}
          options={(["g", "ozt", "dwt"] as const).map((value) => ({ value, label: payout.pers[value] }))}
        />
      </div>
      <Field {...entry("source")} label={payout.source} hint={say.sourceHint} required maxLength={200} />
      <Field {...entry("at")} label={payout.at} hint={payout.atHint} required maxLength={60} />
      <button type="submit">{say.go}</button>
    </form>
  );
}
