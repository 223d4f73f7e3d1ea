import type { Conformity } from "../server/compute/contract.ts";
import { riskSays, ruleSays } from "../server/conformity/decision-words.ts";
import { fixed } from "./numbers.ts";
import { Told } from "./told.tsx";
import { type Locale, words } from "./words/index.ts";

/** The verdict on the claim's limits under the rule that was agreed before measuring, with the risk it carries. */
export function ConformityWords({ conformity, locale }: { conformity: Conformity; locale: Locale }) {
  const say = words(locale).decision;
  const { limits_g_cm3: limits, acceptance_g_cm3: acceptance, worst_acceptance_risk: worst } = conformity;
  const between = ([low, high]: readonly [number, number]) =>
    say.between(fixed(low, 3, locale), fixed(high, 3, locale));
  return (
    <>
      <h3>{say.heading}</h3>
      <p>
        <strong>{say.verdicts[conformity.verdict]}</strong>. <Told says={conformity.says} />
      </p>
      <p>
        {say.limits(between(limits))} {acceptance && say.acceptance(between(acceptance))}
      </p>
      <p class="hint">
        <Told says={ruleSays(conformity.rule)} /> <Told says={riskSays(worst, acceptance)} />
      </p>
    </>
  );
}
