import { useTell } from "../messages/spoken.ts";
import { Facts, Rows } from "../sheet.tsx";
import type { SettlementSheet } from "./view.ts";

/** The payout in a few lines: fine metal, price, and the sum to be paid as the largest figure of the page. */
export function PayoutSums({ sheet }: { sheet: SettlementSheet }) {
  const t = useTell();
  return (
    <dl class="sums">
      {sheet.sums.map(([name, value], place) => (
        <div key={`${place} ${name}`}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
      <div class="total">
        <dt>{t("payout.sum.paid")}</dt>
        <dd>{sheet.paid}</dd>
      </div>
    </dl>
  );
}

/** The lines of a settlement with both ends, what is left out, and the prices and terms that count. */
export function SettlementLines({ sheet }: { sheet: SettlementSheet }) {
  const t = useTell();
  return (
    <>
      <Rows
        caption={t("payout.caption")}
        empty={t("payout.empty")}
        columns={[
          { head: t("payout.what") },
          { head: t("payout.net"), number: true },
          { head: t("payout.fineness") },
          { head: t("payout.rests-on") },
          { head: t("payout.fine") },
          { head: t("payout.pay-low"), number: true },
          { head: t("payout.pay-high"), number: true },
        ]}
        rows={[
          ...sheet.rows.map((row, place) => ({
            key: `${place} ${row.what}`,
            cells: [row.what, row.net, row.fineness, row.restsOn, row.fine, row.payLow, row.payHigh],
          })),
          ...sheet.fees.map(({ what, amount }) => ({
            key: what,
            cells: [what, "", "", "", "", amount, amount],
          })),
        ]}
        foot={[t("payout.together"), "", "", "", "", sheet.totalLow, sheet.totalHigh]}
      />
      <p>
        <strong>{t("payout.paid", { amount: sheet.paid })}</strong> {sheet.paysBy}
      </p>
      <Facts facts={sheet.facts} />
      {sheet.against.map((one) => (
        <p key={one}>{one}</p>
      ))}
      <p class="hint">{t("payout.rounding-rule")}</p>
      {sheet.leftOut.length > 0 && (
        <Rows
          id="left-out"
          caption={t("payout.left-out.caption")}
          empty=""
          columns={[
            { head: t("payout.left-out.ticket") },
            { head: t("payout.left-out.mass"), number: true },
            { head: t("payout.left-out.why") },
          ]}
          rows={sheet.leftOut.map(({ id, ticket, mass, why }, place) => ({
            key: `${place} ${id}`,
            cells: [
              <a key="a" href={`/records/${id}`}>
                {ticket}
              </a>,
              mass,
              why,
            ],
          }))}
        />
      )}
    </>
  );
}
