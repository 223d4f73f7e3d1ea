import type { StatedDecision } from "../server/weighing/statement-shape.ts";
import type { Locale } from "./messages/language.ts";
import { tellerOf } from "./messages/tell.ts";
import { fixed } from "./numbers.ts";

/** The verdict on the claim's limits under the rule that was agreed before measuring, with the risk it carries. */
export function DecisionWords({ decision, locale }: { decision: StatedDecision; locale: Locale }) {
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
