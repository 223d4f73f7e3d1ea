import { Csrf, errorsOf, Field, type FieldProblem } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Fold } from "../sheet.tsx";

export interface SecondPersonView {
  /** limits above which a second person confirms and agrees, as typed; empty for never */
  secondPerson: { massG: string; worth: string; change: string };
  problems: readonly FieldProblem[];
  csrfToken: string;
}

/** Above which limits typed readings are confirmed by a second person. */
export function SecondPersonLimits({ secondPerson, problems, csrfToken }: SecondPersonView) {
  const t = useTell();
  const errorOf = errorsOf(problems);
  return (
    <Fold
      id="second-person"
      title={t("second-person.settings")}
      note={[
        secondPerson.massG && t("second-person.above-mass", { mass: secondPerson.massG }),
        secondPerson.worth && t("second-person.above-worth", { worth: secondPerson.worth }),
        secondPerson.change && t("second-person.above-change", { change: secondPerson.change }),
      ]
        .filter(Boolean)
        .join(" · ")}
      open={problems.some(({ fieldId }) => fieldId.startsWith("second"))}
    >
      <form method="post" action="/settings/second-person">
        <Csrf token={csrfToken} />
        <p>{t("second-person.settings-lead")}</p>
        <Field
          kind="decimal"
          name="secondMassG"
          label={t("second-person.mass-g")}
          hint={t("second-person.never")}
          value={secondPerson.massG}
          after="g"
          {...errorOf("secondMassG")}
        />
        <Field
          kind="decimal"
          name="secondWorth"
          label={t("second-person.worth")}
          hint={`${t("second-person.worth-unit")}; ${t("second-person.never")}`}
          value={secondPerson.worth}
          {...errorOf("secondWorth")}
        />
        <Field
          kind="decimal"
          name="secondChange"
          label={t("second-person.change")}
          hint={`${t("second-person.worth-unit")}; ${t("second-person.never")}`}
          value={secondPerson.change}
          {...errorOf("secondChange")}
        />
        <button type="submit">{t("settings.keep-from-now")}</button>
      </form>
    </Fold>
  );
}
