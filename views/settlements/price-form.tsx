import { AboutFields, Csrf, Field, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { sentBack } from "./sent.ts";
import { SignedBy } from "./signed-by.tsx";
import { metalsPaid, type SettlementView } from "./view.ts";

const massesPaid = ["ozt", "g", "dwt"] as const;
const roundings = ["down", "half-even", "up"] as const;

/** A price is promised with its time and source. */
export function PriceForm(view: SettlementView) {
  const t = useTell();
  const { values, entry } = sentBack(view, "payout");
  return (
    <form method="post" action={`/lots/${view.lotId}/payout`}>
      <Csrf token={view.csrfToken} />
      <AboutFields about={view.about} />
      <div class="row">
        <Select
          name="metal"
          id="payout-metal"
          label={t("payout.metal")}
          value={values.metal ?? "gold"}
          options={metalsPaid.map((value) => ({ value, label: t(`lots.metals.${value}`) }))}
        />
        <Field kind="decimal" {...entry("price")} label={t("payout.price")} required />
        <Field
          {...entry("currency", view.currency)}
          label={t("payout.currency")}
          hint={t("payout.currency-hint")}
          required
        />
        <Select
          name="per"
          label={t("payout.per")}
          value={values.per ?? "ozt"}
          options={massesPaid.map((value) => ({ value, label: t(`payout.pers.${value}`) }))}
        />
      </div>
      <div class="row">
        <Field {...entry("source")} label={t("payout.source")} required />
        <Field {...entry("at")} label={t("payout.at")} hint={t("payout.at-hint")} required />
        <Field
          kind="decimal"
          {...entry("covers")}
          label={t("payout.covers")}
          hint={t("payout.covers-hint")}
          after="g"
        />
      </div>
      <div class="row">
        <Field kind="decimal" {...entry("rate")} label={t("payout.rate")} after="%" required />
        <Field kind="decimal" {...entry("fee", "0")} label={t("payout.fee")} />
        <Select
          name="rounding"
          label={t("payout.rounding")}
          value={values.rounding ?? "down"}
          options={roundings.map((value) => ({ value, label: t(`payout.roundings.${value}`) }))}
        />
      </div>
      <SignedBy view={view} form="payout" go={t("payout.lock")} reasonHint={t("payout.reason-hint")} />
    </form>
  );
}
