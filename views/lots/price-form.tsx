import { Csrf, errorsOf, Field, type FieldError, Select } from "../forms.tsx";
import { useWords } from "../words/spoken.ts";

/** What was entered about a payout, and what of it was refused. */
export interface PayoutEntries {
  lotId: string;
  lotName: string;
  /** entries of both forms */
  values: Readonly<
    Record<
      | "metal"
      | "price"
      | "currency"
      | "per"
      | "source"
      | "at"
      | "rate"
      | "fee"
      | "rounding"
      | "ticket"
      | "deducted"
      | "permille"
      | "saidBy"
      | "by",
      string
    >
  >;
  problems: readonly { fieldId: string; error: FieldError }[];
  csrfToken: string;
  stepKey: string;
}

const options = <K extends string>(names: Record<K, string>) =>
  (Object.keys(names) as K[]).map((value) => ({ value, label: names[value] }));

/** Who may state a fineness. */
const sayers = ["stamp", "laboratory", "customer"] as const;

/** A price is locked with its time and source. */
export function PriceForm(view: PayoutEntries) {
  const { values } = view;
  const { payout: say, lots } = useWords();
  const errorOf = errorsOf(view.problems);
  return (
    <form method="post" action={`/lots/${view.lotId}/payout`} class="sheet">
      <h2>{say.heading}</h2>
      <Csrf token={view.csrfToken} />
      <input type="hidden" name="step" value={view.stepKey} />
      <div class="row">
        <Select name="metal" label={say.metal} value={values.metal} options={options(lots.metals)} />
        <Field
          kind="decimal"
          name="price"
          label={say.price}
          value={values.price}
          required
          {...errorOf("price")}
        />
        <Field
          name="currency"
          label={say.currency}
          hint={say.currencyHint}
          value={values.currency}
          required
          {...errorOf("currency")}
        />
        <Select name="per" label={say.per} value={values.per} options={options(say.pers)} />
      </div>
      <div class="row">
        <Field name="source" label={say.source} value={values.source} required {...errorOf("source")} />
        <Field name="at" label={say.at} hint={say.atHint} value={values.at} required {...errorOf("at")} />
      </div>
      <div class="row">
        <Field
          kind="decimal"
          name="rate"
          label={say.rate}
          after="%"
          value={values.rate}
          required
          {...errorOf("rate")}
        />
        <Field kind="decimal" name="fee" label={say.fee} value={values.fee} {...errorOf("fee")} />
        <Select
          name="rounding"
          label={say.rounding}
          value={values.rounding}
          options={options(say.roundings)}
        />
      </div>
      <button type="submit">{say.lock}</button> <a href={`/lots/${view.lotId}`}>{say.back(view.lotName)}</a>
    </form>
  );
}

/** Stones off the mass of a piece, and a fineness that somebody states. */
export function TermsForm(view: PayoutEntries) {
  const { payout } = useWords();
  const say = payout.terms;
  const errorOf = errorsOf(view.problems);
  const { values } = view;
  return (
    <form method="post" action={`/lots/${view.lotId}/terms`} class="sheet">
      <h2>{say.heading}</h2>
      <p class="hint">{say.lead}</p>
      <Csrf token={view.csrfToken} />
      <div class="row">
        <Field name="ticket" scan label={say.ticket} value={values.ticket} required {...errorOf("ticket")} />
        <Field
          kind="decimal"
          name="deducted"
          label={say.deducted}
          after="g"
          value={values.deducted}
          {...errorOf("deducted")}
        />
        <Field
          kind="decimal"
          name="permille"
          label={say.fineness}
          after="‰"
          value={values.permille}
          {...errorOf("permille")}
        />
        <Select
          name="saidBy"
          label={say.saidBy}
          value={values.saidBy}
          options={sayers.map((value) => ({ value, label: payout.sayers[value] }))}
        />
        <Field name="by" label={say.by} value={values.by} maxLength={100} />
      </div>
      <button type="submit">{say.go}</button>
    </form>
  );
}
