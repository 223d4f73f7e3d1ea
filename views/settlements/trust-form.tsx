import { AboutFields, Check, Csrf, Select } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { sentBack } from "./sent.ts";
import { SignedBy } from "./signed-by.tsx";
import { type SettlementView, trustSources } from "./view.ts";

const ends = ["low", "expected", "high"] as const;

/** Who is believed before whom, and which figure of an interval is paid. */
export function TrustForm(view: SettlementView) {
  const t = useTell();
  const { values } = sentBack(view, "trust");
  const { order, pays, narrowed } = view.trust;
  const isSent = view.sent === "trust";
  return (
    <form method="post" action={`/lots/${view.lotId}/trust`}>
      <p class="hint">{t("settlement.trust.lead")}</p>
      <Csrf token={view.csrfToken} />
      <AboutFields about={view.about} />
      <div class="row">
        {order.map((source, place) => (
          <Select
            key={source}
            name={`trust-${place + 1}`}
            label={t("settlement.trust.place", { place: place + 1 })}
            value={values[`trust-${place + 1}`] ?? source}
            options={trustSources.map((value) => ({ value, label: t(`payout.sayers.${value}`) }))}
          />
        ))}
        <Select
          name="ends"
          label={t("settlement.trust.pays")}
          value={values.ends ?? pays}
          options={ends.map((value) => ({ value, label: t(`settlement.pays.${value}`) }))}
        />
      </div>
      <Check
        name="narrowed"
        label={t("settlement.trust.narrow")}
        checked={isSent ? values.narrowed !== undefined : narrowed}
      />
      <SignedBy view={view} form="trust" go={t("payout.terms.go")} />
    </form>
  );
}
