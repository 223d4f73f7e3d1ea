import { Csrf, errorsOf, Field, type FieldError } from "../forms.tsx";
import { useWords } from "../words/spoken.ts";

export interface SecondPersonView {
  /** limits above which a second person confirms typed readings, as typed; empty for never */
  secondPerson: { massG: string; worth: string };
  problems: readonly { fieldId: string; error: FieldError }[];
  csrfToken: string;
}

/** Above which limits typed readings are confirmed by a second person. */
export function SecondPersonLimits({ secondPerson, problems, csrfToken }: SecondPersonView) {
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
