import { useLocale, useTell } from "../messages/spoken.ts";
import { fixed } from "../numbers.ts";
import { type Residual, Residuals } from "../plots/residuals.tsx";
import { Sentence } from "../sentence.tsx";
import { Fold, Rows } from "../sheet.tsx";

export interface MixtureLawPage {
  residuals: readonly Residual[];
  /** root of the mean square of what they are off by, % */
  rmsPercent: number;
  /** excess terms: cm³/g, and the published densities each was fitted to */
  terms: readonly { pair: string; b: string; u: string; from: Sentence; points: number }[];
}

/** How densities of alloys are computed, and how far published ones lie off that. */
export function MixtureLaw({ residuals, rmsPercent, terms }: MixtureLawPage) {
  const locale = useLocale();
  const t = useTell();
  return (
    <>
      <p>{t("mixture-law.lead", { count: residuals.length, rms: fixed(rmsPercent, 2, locale) })}</p>
      <Residuals id="residuals" residuals={residuals} />
      <Fold id="terms" title={t("mixture-law.terms")} note={terms.length}>
        <Rows
          caption={t("mixture-law.terms-caption")}
          empty=""
          columns={[
            { head: t("mixture-law.pair") },
            { head: "B, cm³/g", number: true },
            { head: "u, cm³/g", number: true },
            { head: t("mixture-law.points"), number: true },
            { head: t("metals.source") },
          ]}
          rows={terms.map(({ pair, b, u, from, points }) => ({
            key: pair,
            cells: [pair, b, u, `${points}`, <Sentence key="f" message={from} />],
          }))}
        />
      </Fold>
    </>
  );
}
