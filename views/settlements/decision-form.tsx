import { AboutFields, Csrf, Field, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { sentBack } from "./sent.ts";
import { SignedBy } from "./signed-by.tsx";
import type { SettlementView } from "./view.ts";

/** A named person decides on a piece that nothing is paid for, or leaves one out. */
export function DecisionForm(view: SettlementView) {
  const t = useTell();
  const { values, entry } = sentBack(view, "decisions");
  return (
    <form method="post" action={`/lots/${view.lotId}/decisions`}>
      <p class="hint">{t("settlement.decision.lead")}</p>
      <Csrf token={view.csrfToken} />
      <AboutFields about={view.about} />
      <div class="row">
        <Field {...entry("decided")} scan label={t("payout.terms.ticket")} required />
        <Select
          name="pays"
          label={t("settlement.decision.what")}
          value={values.pays ?? "yes"}
          options={[
            { value: "yes", label: t("settlement.decision.pay") },
            { value: "no", label: t("settlement.decision.leave-out") },
          ]}
        />
        <Select
          name="mass"
          label={t("settlement.decision.mass")}
          value={values.mass ?? "first"}
          options={[
            { value: "first", label: t("settlement.decision.first") },
            { value: "again", label: t("settlement.decision.again") },
          ]}
        />
      </div>
      <SignedBy view={view} form="decisions" go={t("payout.terms.go")} />
    </form>
  );
}
