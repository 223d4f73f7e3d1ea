import { AboutFields, Csrf, Field, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { sentBack } from "./sent.ts";
import { SignedBy } from "./signed-by.tsx";
import { metalsPaid, type SettlementView } from "./view.ts";

/** Who may state a fineness. */
const sayers = ["stamp", "laboratory", "customer"] as const;

/** Stones off the mass of a piece, and a fineness that somebody states; what is left empty stays as it was said. */
export function TermsForm(view: SettlementView) {
  const t = useTell();
  const { values, entry } = sentBack(view, "terms");
  return (
    <form method="post" action={`/lots/${view.lotId}/terms`}>
      <p class="hint">{t("payout.terms.lead")}</p>
      <Csrf token={view.csrfToken} />
      <AboutFields about={view.about} />
      <div class="row">
        <Field {...entry("ticket")} scan label={t("payout.terms.ticket")} required />
        <Field kind="decimal" {...entry("deducted")} label={t("payout.terms.deducted")} after="g" />
      </div>
      <div class="row">
        <Field kind="decimal" {...entry("permille")} label={t("payout.terms.fineness")} after="‰" />
        <Select
          name="metal"
          id="terms-metal"
          label={t("payout.metal")}
          empty={t("payout.terms.metal-of-claim")}
          value={values.metal ?? ""}
          options={metalsPaid.map((value) => ({ value, label: t(`lots.metals.${value}`) }))}
        />
        <Select
          name="saidBy"
          label={t("payout.terms.said-by")}
          value={values.saidBy ?? "stamp"}
          options={sayers.map((value) => ({ value, label: t(`payout.sayers.${value}`) }))}
        />
        <Select
          name="action"
          label={t("payout.terms.action")}
          value={values.action ?? "state"}
          options={[
            { value: "state", label: t("payout.terms.state") },
            { value: "withdraw", label: t("payout.terms.withdraw") },
          ]}
        />
      </div>
      <SignedBy view={view} form="terms" go={t("payout.terms.go")} reasonHint={t("payout.reason-hint")} />
    </form>
  );
}
