import { ruleChoices } from "../../server/station/bench-settings.ts";
import { Field, type FieldError, RadioCards } from "../forms.tsx";
import { useWords } from "../words/spoken.ts";

/** The decision rule with the risk each one carries, in words. */
export function RuleChoice({
  rule,
  error,
}: {
  rule: { kind: string; multiple: string };
  error?: FieldError;
}) {
  const say = useWords().decision;
  return (
    <>
      <RadioCards
        name="rule"
        legend={say.choice}
        value={rule.kind}
        cards={ruleChoices.map((kind) => ({
          value: kind,
          label: say.choices[kind].name,
          hint: say.choices[kind].risk,
        }))}
      />
      <Field
        kind="decimal"
        name="ruleMultiple"
        label={say.multiple}
        hint={say.multipleHint}
        after="U"
        value={rule.multiple}
        {...(error === undefined ? {} : { error })}
      />
      <p class="hint">{say.choiceHint}</p>
    </>
  );
}
