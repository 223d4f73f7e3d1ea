import type { Message } from "../../calibration/message.ts";
import { BuyingCaution } from "../cautions.tsx";
import { errorsOf, Field, type FieldProblem, Problems, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Sentence } from "../sentence.tsx";
import { Facts, Sheet } from "../sheet.tsx";

export const metalPriceFields = ["metal", "colour", "price", "currency", "per", "source", "at"] as const;

export interface MetalPriceView {
  record: { href: string; ticket: string; density: string; mass: string };
  action: string;
  values: Readonly<Record<(typeof metalPriceFields)[number], string>>;
  colours: readonly { value: string; label: string }[];
  problems: readonly FieldProblem[];
  /** in words: the record is voided, or disagrees with its claim */
  warnings: readonly string[];
  answer?:
    | { range: string; condition: string; facts: readonly (readonly [name: string, value: string])[] }
    | { impossible: string };
  /** what else is not excluded */
  others: Message;
}

/** Fine mass of one piece times a price, low to high, with what that leaves out. */
export function MetalPrice(view: MetalPriceView) {
  const t = useTell();
  const { record, problems, warnings, answer, others } = view;
  return (
    <>
      <p>
        <a href={record.href}>{t("records.record-of", { ticket: record.ticket })}</a>: {record.density},{" "}
        {record.mass}.
      </p>
      <Problems heading={t("metal-price.problems")} problems={problems} />
      {warnings.map((one) => (
        <p class="problems" key={one}>
          <strong>{one}</strong>
        </p>
      ))}
      <Form {...view} />
      {answer && (
        <Sheet id="metal-price" title={t("metal-price.heading")}>
          {"impossible" in answer ? (
            <p role="status">{answer.impossible}</p>
          ) : (
            <>
              <p class="result-value" role="status">
                {answer.range}
              </p>
              <p>
                <strong>{answer.condition}.</strong> {t("metal-price.not-valuation")}
              </p>
              <Facts facts={answer.facts} />
            </>
          )}
        </Sheet>
      )}
      <Sheet id="meaning" title={t("metal-price.meaning")}>
        {answer === undefined && <p>{t("metal-price.not-valuation")}</p>}
        <p>{t("metal-price.deductions")}</p>
        <p>
          {t("metal-price.not-proof")} <Sentence message={others} /> {t("metal-price.hollow")}
        </p>
        <p>
          <a href={`${record.href}/evidence`}>{t("metal-price.narrow")}</a>
        </p>
      </Sheet>
      <BuyingCaution />
    </>
  );
}

function Form({ action, values, colours, problems }: MetalPriceView) {
  const t = useTell();
  const errorOf = errorsOf(problems);
  const entry = <N extends keyof typeof values>(name: N) => ({ name, value: values[name], ...errorOf(name) });
  return (
    <form method="get" action={action} class="sheet">
      <p class="hint">{t("metal-price.lead")}</p>
      <div class="row">
        <Select
          name="metal"
          label={t("metal-price.if-it-is")}
          value={values.metal}
          options={(["gold", "silver"] as const).map((value) => ({
            value,
            label: t(`lots.metals.${value}`),
          }))}
        />
        <Select name="colour" label={t("metal-price.colour")} value={values.colour} options={colours} />
      </div>
      <div class="row">
        <Field kind="decimal" {...entry("price")} label={t("payout.price")} required />
        <Field
          {...entry("currency")}
          label={t("payout.currency")}
          hint={t("payout.currency-hint")}
          required
        />
        <Select
          name="per"
          label={t("payout.per")}
          value={values.per}
          options={(["g", "ozt", "dwt"] as const).map((value) => ({
            value,
            label: t(`payout.pers.${value}`),
          }))}
        />
      </div>
      <Field
        {...entry("source")}
        label={t("payout.source")}
        hint={t("metal-price.source-hint")}
        required
        maxLength={200}
      />
      <Field {...entry("at")} label={t("payout.at")} hint={t("payout.at-hint")} required maxLength={60} />
      <button type="submit">{t("metal-price.go")}</button>
    </form>
  );
}
