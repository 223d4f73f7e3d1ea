import type { Code } from "../calibration/message.ts";
import type { Locale } from "./messages/language.ts";
import { tellerOf } from "./messages/tell.ts";
import { fixed } from "./numbers.ts";

/** The claim's band as limits under the rule agreed before measuring. */
export interface DecisionView {
  rule: { kind: "simple" | "guard-band" | "pass-and-conditional"; multiple: number };
  limits_g_cm3: readonly [number, number];
  /** null when the guard bands leave nothing between them */
  acceptance_g_cm3: readonly [number, number] | null;
  verdict: Verdict;
  specific_risk: number;
  worst_acceptance_risk: number;
}

type Verdict = { [Known in Code]: Known extends `decision.verdicts.${infer Name}` ? Name : never }[Code];

/** The verdict on the claim's limits under the rule that was agreed before measuring, with the risk it carries. */
export function DecisionWords({ decision, locale }: { decision: DecisionView; locale: Locale }) {
  const t = tellerOf(locale);
  const { limits_g_cm3: limits, acceptance_g_cm3: acceptance, worst_acceptance_risk: worst } = decision;
  const between = ([low, high]: readonly [number, number]) =>
    t("decision.between", { low: fixed(low, 3, locale), high: fixed(high, 3, locale) });
  return (
    <>
      <h3>{t("decision.heading")}</h3>
      <p>
        <strong>{t(`decision.verdicts.${decision.verdict}`)}</strong>.{" "}
        {t("decision.wrong", { percent: 100 * decision.specific_risk })}
      </p>
      <p>
        {t("decision.limits", { limits: between(limits) })}{" "}
        {acceptance && t("decision.acceptance", { interval: between(acceptance) })}
      </p>
      <p class="hint">
        {t(`decision.rule.${decision.rule.kind}`, { multiple: decision.rule.multiple })}{" "}
        {acceptance ? t("decision.risk", { percent: 100 * worst }) : t("decision.risk-none")}
      </p>
    </>
  );
}
