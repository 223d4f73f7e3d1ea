import { type About, AboutFields, Csrf, errorsOf, Field, type FieldError, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";

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
  about: About;
}

const metalsPaid = ["gold", "silver"] as const;
const massesPaid = ["ozt", "g", "dwt"] as const;
const roundings = ["down", "half-even", "up"] as const;

/** Who may state a fineness. */
const sayers = ["stamp", "laboratory", "customer"] as const;

/** A price is locked with its time and source. */
export function PriceForm(view: PayoutEntries) {
  const { values } = view;
  const t = useTell();
  const errorOf = errorsOf(view.problems);
  return (
    <form method="post" action={`/lots/${view.lotId}/payout`} class="sheet">
      <h2>{t("payout.heading")}</h2>
      <Csrf token={view.csrfToken} />
      <AboutFields about={view.about} />
      <div class="row">
        <Select
          name="metal"
          label={t("payout.metal")}
          value={values.metal}
          options={metalsPaid.map((value) => ({ value, label: t(`lots.metals.${value}`) }))}
        />
        <Field
          kind="decimal"
          name="price"
          label={t("payout.price")}
          value={values.price}
          required
          {...errorOf("price")}
        />
        <Field
          name="currency"
          label={t("payout.currency")}
          hint={t("payout.currency-hint")}
          value={values.currency}
          required
          {...errorOf("currency")}
        />
        <Select
          name="per"
          label={t("payout.per")}
          value={values.per}
          options={massesPaid.map((value) => ({ value, label: t(`payout.pers.${value}`) }))}
        />
      </div>
      <div class="row">
        <Field
          name="source"
          label={t("payout.source")}
          value={values.source}
          required
          {...errorOf("source")}
        />
        <Field
          name="at"
          label={t("payout.at")}
          hint={t("payout.at-hint")}
          value={values.at}
          required
          {...errorOf("at")}
        />
      </div>
      <div class="row">
        <Field
          kind="decimal"
          name="rate"
          label={t("payout.rate")}
          after="%"
          value={values.rate}
          required
          {...errorOf("rate")}
        />
        <Field kind="decimal" name="fee" label={t("payout.fee")} value={values.fee} {...errorOf("fee")} />
        <Select
          name="rounding"
          label={t("payout.rounding")}
          value={values.rounding}
          options={roundings.map((value) => ({ value, label: t(`payout.roundings.${value}`) }))}
        />
      </div>
      <button type="submit">{t("payout.lock")}</button>{" "}
      <a href={`/lots/${view.lotId}`}>{t("payout.back", { lot: view.lotName })}</a>
    </form>
  );
}

/** Stones off the mass of a piece, and a fineness that somebody states. */
export function TermsForm(view: PayoutEntries) {
  const t = useTell();
  const errorOf = errorsOf(view.problems);
  const { values } = view;
  return (
    <form method="post" action={`/lots/${view.lotId}/terms`} class="sheet">
      <h2>{t("payout.terms.heading")}</h2>
      <p class="hint">{t("payout.terms.lead")}</p>
      <Csrf token={view.csrfToken} />
      <AboutFields about={view.about} />
      <div class="row">
        <Field
          name="ticket"
          scan
          label={t("payout.terms.ticket")}
          value={values.ticket}
          required
          {...errorOf("ticket")}
        />
        <Field
          kind="decimal"
          name="deducted"
          label={t("payout.terms.deducted")}
          after="g"
          value={values.deducted}
          {...errorOf("deducted")}
        />
        <Field
          kind="decimal"
          name="permille"
          label={t("payout.terms.fineness")}
          after="‰"
          value={values.permille}
          {...errorOf("permille")}
        />
        <Select
          name="saidBy"
          label={t("payout.terms.said-by")}
          value={values.saidBy}
          options={sayers.map((value) => ({ value, label: t(`payout.sayers.${value}`) }))}
        />
        <Field name="by" label={t("payout.terms.by")} value={values.by} maxLength={100} />
      </div>
      <button type="submit">{t("payout.terms.go")}</button>
    </form>
  );
}
