import { BuyingCaution } from "../cautions.tsx";
import { Problems } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Facts, Rows, Sheet } from "../sheet.tsx";
import { type PayoutEntries, PriceForm, TermsForm } from "./price-form.tsx";

/** One line of the worksheet; low and high follow the interval of the fine mass. */
export interface PayoutRow {
  what: string;
  net: string;
  fineness: string;
  /** who says so: stamp, density, laboratory; in words */
  saidBy: string;
  /** fine metal, low to high, in g and in the unit of the price */
  fine: string;
  payLow: string;
  payHigh: string;
}

export interface PayoutView extends PayoutEntries {
  /** set once a price is locked */
  sheet?: {
    facts: readonly (readonly [name: string, value: string])[];
    rows: readonly PayoutRow[];
    totalLow: string;
    totalHigh: string;
    /** tickets that bring no line */
    left: string;
    /** what this house's melts say of the lot, one sentence or more each; empty while they say nothing */
    melts: readonly string[];
  };
}

/** The worksheet from fine mass to money, with both ends. */
export function Payout(view: PayoutView) {
  const t = useTell();
  const { sheet } = view;
  return (
    <>
      <BuyingCaution />
      <Problems heading={t("payout.problems")} problems={view.problems} />
      {sheet && (
        <Sheet id="worksheet" title={t("payout.title", { lot: view.lotName })}>
          <Facts facts={sheet.facts} />
          <Rows
            caption={t("payout.caption")}
            empty={t("payout.empty")}
            columns={[
              { head: t("payout.what") },
              { head: t("payout.net"), number: true },
              { head: t("payout.fineness") },
              { head: t("payout.said-by") },
              { head: t("payout.fine") },
              { head: t("payout.pay-low"), number: true },
              { head: t("payout.pay-high"), number: true },
            ]}
            rows={sheet.rows.map((row) => ({
              key: row.what,
              cells: [row.what, row.net, row.fineness, row.saidBy, row.fine, row.payLow, row.payHigh],
            }))}
            foot={[t("payout.together"), "", "", "", "", sheet.totalLow, sheet.totalHigh]}
          />
          {sheet.left !== "" && <p>{t("payout.left", { tickets: sheet.left })}</p>}
          <p>{t("payout.says")}</p>
          {sheet.melts.length > 0 && <h3>{t("assay.own-melts.heading")}</h3>}
          {sheet.melts.map((one) => (
            <p key={one}>{one}</p>
          ))}
        </Sheet>
      )}
      <PriceForm {...view} />
      <TermsForm {...view} />
    </>
  );
}
