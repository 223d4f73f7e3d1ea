import { tellerOf } from "../../views/messages/tell.ts";
import type { StatedDecision } from "../weighing/statement-shape.ts";
import type { Stated } from "./stated.ts";
import type { Writing } from "./writing.ts";

/** Which rule led from the density to the finding, at which risk, and what a rule agreed for the limits says. */
export function decisionOf(
  { piece: item, statement }: Stated,
  confidence: number,
  writing: Writing,
): string[] {
  const { t } = writing;
  const percent = (share: number) => `${writing.number(`${+(share * 100).toFixed(2)}`)} %`;
  const { claim, decision } = statement.conformity;
  if (claim === null) return [t("report.decision.none")];
  const exclusion = t("report.decision.exclusion", { percent: percent(confidence) });
  const rule = item.decisionRule ?? (decision ? exclusion : `${exclusion} ${t("report.decision.no-other")}`);
  return [
    t("report.decision.rule", { rule }),
    t("report.decision.risk", { percent: percent(1 - confidence) }),
    ...(decision ? decisionLines(decision, writing) : []),
  ];
}

/** The verdict on the claim's limits under the rule kept with the piece when it was opened. */
function decisionLines(decision: StatedDecision, { t, number, locale }: Writing): string[] {
  const { limits_g_cm3: limits, acceptance_g_cm3: acceptance } = decision;
  const between = ([low, high]: readonly [number, number]) =>
    t("report.decision.between", { low: number(low.toFixed(3)), high: number(high.toFixed(3)) });
  const ends = [
    t("report.decision.limits", { limits: between(limits) }),
    ...(acceptance ? [t("report.decision.accepted", { interval: between(acceptance) })] : []),
  ];
  const words = tellerOf(locale);
  const verdict = words(`decision.verdicts.${decision.verdict}`);
  return [
    t("report.decision.of-limits", {
      rule: words(`decision.rule.${decision.rule.kind}`, { multiple: decision.rule.multiple }),
      risk: acceptance
        ? words("decision.risk", { percent: 100 * decision.worst_acceptance_risk })
        : words("decision.risk-none"),
    }),
    `${ends.join("; ")}. ${verdict}: ${words("decision.wrong", { percent: 100 * decision.specific_risk })}`,
  ];
}
