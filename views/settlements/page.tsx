import { BuyingCaution } from "../cautions.tsx";
import { Problems } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Rows, Sheet } from "../sheet.tsx";
import { ClosedSettlements } from "./closed.tsx";
import { DecisionForm } from "./decision-form.tsx";
import { PriceForm } from "./price-form.tsx";
import { SettlementLines } from "./sheet.tsx";
import { TermsForm } from "./terms-form.tsx";
import { TrustForm } from "./trust-form.tsx";
import type { SettlementView } from "./view.ts";

/** The settlement of a lot: from fine mass to money, with both ends and what each sum rests on. */
export function SettlementPage(view: SettlementView) {
  const t = useTell();
  const { sheet, preview } = view;
  return (
    <>
      <BuyingCaution />
      <Problems heading={t("payout.problems")} problems={view.problems} />
      {preview && (
        <Sheet id="difference" title={t("settlement.preview.heading")}>
          <Rows
            caption={t("settlement.preview.caption")}
            empty={t("settlement.preview.nothing")}
            columns={[
              { head: t("payout.what") },
              { head: t("settlement.preview.before"), number: true },
              { head: t("settlement.preview.after"), number: true },
            ]}
            rows={preview.rows.map(({ what, before, after }) => ({
              key: what,
              cells: [what, before, after],
            }))}
          />
        </Sheet>
      )}
      <NotKept {...view} />
      <ClosedSettlements {...view} />
      {sheet && !view.isClosed && (
        <Sheet id="worksheet" title={t("payout.title", { lot: view.lotName })}>
          <SettlementLines sheet={sheet} />
          <p>{t("payout.says")}</p>
          {view.melts.length > 0 && <h3>{t("assay.own-melts.heading")}</h3>}
          {view.melts.map((one) => (
            <p key={one}>{one}</p>
          ))}
        </Sheet>
      )}
      <p>
        <a href={`/lots/${view.lotId}`}>{t("payout.back", { lot: view.lotName })}</a>
      </p>
      {!view.isClosed && (
        <>
          <PriceForm {...view} />
          <TermsForm {...view} />
          {sheet && <DecisionForm {...view} />}
          {sheet && <TrustForm {...view} />}
        </>
      )}
      <Sayings heading={t("settlement.prices-so-far")} id="prices" said={view.priceVersions} />
      <Sayings heading={t("settlement.said-so-far")} id="said" said={view.said} />
    </>
  );
}

/** What was typed into a form that the page no longer has: the lot was closed, or opened again, meanwhile. */
function NotKept({ sent, values, isClosed }: SettlementView) {
  const t = useTell();
  if (sent === undefined || (sent === "reopening") === isClosed) return null;
  const typed = Object.entries(values).filter(
    ([name, value]) => value.trim() !== "" && !["_csrf", "subject", "version", "preview"].includes(name),
  );
  return (
    <Sheet id="not-kept" title={t("settlement.not-kept")}>
      <ul>
        {typed.map(([name, value]) => (
          <li key={name}>
            {name}: {value}
          </li>
        ))}
      </ul>
    </Sheet>
  );
}

function Sayings({ heading, id, said }: { heading: string; id: string; said: readonly string[] }) {
  if (said.length === 0) return null;
  return (
    <Sheet id={id} title={heading}>
      <ol reversed>
        {said.map((one, place) => (
          <li key={String(place)}>{one}</li>
        ))}
      </ol>
    </Sheet>
  );
}
