import { Csrf, Field, type FieldError } from "../forms.tsx";
import { useWords } from "../words/spoken.ts";

export interface HouseView {
  house: string;
  address: string;
  contact: string;
  accreditedBy: string;
  accreditation: string;
  verifiedScale: string;
  verifiedUntil: string;
  problems: readonly { fieldId: string; error: FieldError }[];
  csrfToken: string;
}

/** Who issues the reports, as they name it. */
export function House(view: HouseView) {
  const { house, address, contact, verifiedScale, verifiedUntil, accreditedBy, accreditation } = view;
  const say = useWords().settings;
  const error = view.problems.find(({ fieldId }) => fieldId === "accreditation")?.error;
  return (
    <form method="post" action="/settings/house" class="sheet">
      <h2>{say.onReports}</h2>
      <Csrf token={view.csrfToken} />
      <Field name="house" label={say.house} hint={say.houseHint} value={house} />
      <Field name="address" label={say.address} value={address} />
      <Field name="contact" label={say.contact} hint={say.contactHint} value={contact} />
      <Field
        name="verifiedScale"
        label={say.verifiedScale}
        hint={say.verifiedScaleHint}
        value={verifiedScale}
      />
      <Field kind="date" name="verifiedUntil" label={say.verifiedUntil} value={verifiedUntil} />
      <Field name="accreditedBy" label={say.accreditedBy} hint={say.accreditedByHint} value={accreditedBy} />
      <Field
        name="accreditation"
        label={say.accreditation}
        value={accreditation}
        {...(error === undefined ? {} : { error })}
      />
      <button type="submit">{say.keep}</button>
    </form>
  );
}
