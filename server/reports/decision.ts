import { words } from "../../views/words/index.ts";
import { type Conformity, conformity as conformityShape } from "../compute/contract.ts";
import { riskSays, ruleSays } from "../conformity/decision-words.ts";
import type { Stated } from "./stated.ts";
import type { Writing } from "./writing.ts";

/** Which rule led from the density to the finding, at which risk, and what a rule agreed for the limits says. */
export function decisionOf({ piece, result }: Stated, confidence: number, writing: Writing): string[] {
  const { decision } = writing.say;
  const percent = (share: number) => `${writing.number(`${+(share * 100).toFixed(2)}`)} %`;
  const { finding } = result.response;
  if (!finding) return [decision.none];
  const kept = conformityShape.safeParse(finding.conformity);
  const exclusion = decision.exclusion(percent(confidence));
  const rule = piece.decisionRule ?? (finding.conformity ? exclusion : `${exclusion} ${decision.noOther}`);
  return [
    decision.rule(rule),
    decision.risk(percent(1 - confidence)),
    ...(kept.success ? conformityLines(kept.data, writing) : []),
  ];
}

/** The verdict on the claim's limits under the rule kept with the piece when it was opened. */
function conformityLines(conformity: Conformity, { say, number, tell, locale }: Writing): string[] {
  const { decision } = say;
  const { limits_g_cm3: limits, acceptance_g_cm3: acceptance } = conformity;
  const between = ([low, high]: readonly [number, number]) =>
    decision.between(number(low.toFixed(3)), number(high.toFixed(3)));
  const ends = [
    decision.limits(between(limits)),
    ...(acceptance ? [decision.accepted(between(acceptance))] : []),
  ];
  const verdict = words(locale).decision.verdicts[conformity.verdict];
  return [
    decision.ofLimits(
      tell(ruleSays(conformity.rule)),
      tell(riskSays(conformity.worst_acceptance_risk, acceptance)),
    ),
    `${ends.join("; ")}. ${verdict}: ${tell(conformity.says)}`,
  ];
}
