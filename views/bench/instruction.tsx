import type { ComponentChildren } from "preact";
import { useTell } from "../messages/spoken.ts";
import type { StepView } from "./view.ts";

/** What to do now, one sentence, and what to mind with it. */
export function Instruction({
  step: { name },
  children,
}: {
  step: StepView;
  /** the field to fill, where the step is one */
  children?: ComponentChildren;
}) {
  const t = useTell();
  return (
    <div>
      <h2 id="step-heading" tabIndex={-1} data-step-heading={name} aria-describedby="step-does">
        {t(`step.${name}.title`)}
      </h2>
      <p class="do" id="step-does">
        {t(`step.${name}.does`)}
      </p>
      {children ?? <p class="hint">{t(`step.${name}.minds`)}</p>}
    </div>
  );
}
