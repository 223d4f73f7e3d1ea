import { Csrf, Field, type FieldProblem } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Fold } from "../sheet.tsx";

export interface OrganisationView {
  organisation: string;
  address: string;
  contact: string;
  accreditedBy: string;
  accreditation: string;
  verifiedScale: string;
  verifiedUntil: string;
  problems: readonly FieldProblem[];
  csrfToken: string;
}

/** Who issues the reports, as they name it. */
export function Organisation(view: OrganisationView) {
  const { organisation, address, contact, verifiedScale, verifiedUntil, accreditedBy, accreditation } = view;
  const t = useTell();
  const error = view.problems.find(({ fieldId }) => fieldId === "accreditation")?.error;
  return (
    <Fold id="on-reports" title={t("settings.on-reports")} note={organisation} open={error !== undefined}>
      <form method="post" action="/settings/organisation">
        <Csrf token={view.csrfToken} />
        <Field
          name="organisation"
          label={t("settings.organisation")}
          hint={t("settings.organisation-hint")}
          value={organisation}
        />
        <Field name="address" label={t("settings.address")} value={address} />
        <Field
          name="contact"
          label={t("settings.contact")}
          hint={t("settings.contact-hint")}
          value={contact}
        />
        <Field
          name="verifiedScale"
          label={t("settings.verified-scale")}
          hint={t("settings.verified-scale-hint")}
          value={verifiedScale}
        />
        <Field kind="date" name="verifiedUntil" label={t("settings.verified-until")} value={verifiedUntil} />
        <Field
          name="accreditedBy"
          label={t("settings.accredited-by")}
          hint={t("settings.accredited-by-hint")}
          value={accreditedBy}
        />
        <Field
          name="accreditation"
          label={t("settings.accreditation")}
          value={accreditation}
          {...(error === undefined ? {} : { error })}
        />
        <button type="submit">{t("settings.keep")}</button>
      </form>
    </Fold>
  );
}
