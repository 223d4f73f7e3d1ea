import type { Code } from "../../calibration/message.ts";
import { Field, RadioCards } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import type { Sentence } from "../sentence.tsx";

type RuleKind = { [Known in Code]: Known extends `decision.choices.${infer Kind}.name` ? Kind : never }[Code];

/** No rule leaves the finding alone; the others add a verdict on the claim's limits. */
export const ruleKinds: readonly RuleKind[] = ["none", "simple", "guard-band", "pass-and-conditional"];

/** The decision rule with the risk each one carries, in words. */
export function RuleChoice({ rule, error }: { rule: { kind: string; multiple: string }; error?: Sentence }) {
  const t = useTell();
  return (
    <>
      <RadioCards
        name="rule"
        legend={t("decision.choice")}
        value={rule.kind}
        cards={ruleKinds.map((kind) => ({
          value: kind,
          label: t(`decision.choices.${kind}.name`),
          hint: t(`decision.choices.${kind}.risk`),
        }))}
      />
      <Field
        kind="decimal"
        name="ruleMultiple"
        label={t("decision.multiple")}
        hint={t("decision.multiple-hint")}
        after="U"
        value={rule.multiple}
        {...(error === undefined ? {} : { error })}
      />
      <p class="hint">{t("decision.choice-hint")}</p>
    </>
  );
}
