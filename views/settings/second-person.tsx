import { Csrf, errorsOf, Field } from "../forms.tsx";
import { useWords } from "../words/spoken.ts";
import type { SettingsView } from "./index.tsx";

/** Above which limits typed readings are confirmed by a second person. */
export function SecondPersonLimits({
  secondPerson,
  problems,
  csrfToken,
}: Pick<SettingsView, "secondPerson" | "problems" | "csrfToken">) {
  const { secondPerson: say, settings } = useWords();
  const errorOf = errorsOf(problems);
  return (
    <form method="post" action="/settings/second-person" class="sheet">
      <h2>{say.settings}</h2>
      <Csrf token={csrfToken} />
      <p>{say.settingsLead}</p>
      <Field
        kind="decimal"
        name="secondMassG"
        label={say.massG}
        hint={say.never}
        value={secondPerson.massG}
        after="g"
        {...errorOf("secondMassG")}
      />
      <Field
        kind="decimal"
        name="secondWorth"
        label={say.worth}
        hint={`${say.worthUnit}; ${say.never}`}
        value={secondPerson.worth}
        {...errorOf("secondWorth")}
      />
      <button type="submit">{settings.keepFromNow}</button>
    </form>
  );
}
