import { Csrf, errorsOf, Field, type FieldProblem } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { Fold } from "../sheet.tsx";

export interface PlaceView {
  /** as typed; empty for the clock of the computer, which is `ownZone`, and for no currency */
  place: { timeZone: string; currency: string };
  ownZone: string;
  problems: readonly FieldProblem[];
  csrfToken: string;
}

/** Where the bench stands: the clock of its pages and papers, and the currency of its prices. */
export function Place({ place, ownZone, problems, csrfToken }: PlaceView) {
  const t = useTell();
  const errorOf = errorsOf(problems);
  return (
    <Fold
      id="place"
      title={t("settings.place")}
      note={[place.timeZone || ownZone, place.currency].filter(Boolean).join(" · ")}
      open={problems.some(({ fieldId }) => ["timeZone", "currency"].includes(fieldId))}
    >
      <form method="post" action="/settings/place">
        <Csrf token={csrfToken} />
        <p>{t("settings.place.lead")}</p>
        <Field
          name="timeZone"
          label={t("settings.place.zone")}
          hint={t("settings.place.zone-hint", { zone: ownZone })}
          value={place.timeZone}
          {...errorOf("timeZone")}
        />
        <Field
          name="currency"
          label={t("payout.currency")}
          hint={t("payout.currency-hint")}
          value={place.currency}
          {...errorOf("currency")}
        />
        <button type="submit">{t("settings.keep-from-now")}</button>
      </form>
    </Fold>
  );
}
