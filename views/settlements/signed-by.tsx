import { Field } from "../forms.tsx";
import { useTell } from "../messages/spoken.ts";
import { sentBack } from "./sent.ts";
import type { SettlementForm, SettlementView } from "./view.ts";

/** Who says it and why, and the two ways to send it: looked at first, or written down. */
export function SignedBy({
  view,
  form,
  go,
  reasonHint,
}: {
  view: SettlementView;
  form: SettlementForm;
  go: string;
  reasonHint?: string;
}) {
  const t = useTell();
  const { entry } = sentBack(view, form);
  return (
    <>
      <div class="row">
        <Field {...entry("by")} label={t("payout.terms.by")} maxLength={100} />
        <Field
          {...entry("second")}
          label={t("settlement.second")}
          hint={t("settlement.second-above-hint")}
          maxLength={100}
        />
        <Field
          {...entry("reason")}
          label={t("settlement.reason")}
          {...(reasonHint === undefined ? {} : { hint: reasonHint })}
          maxLength={400}
        />
      </div>
      <button type="submit">{go}</button>{" "}
      <button type="submit" class="plain" name="preview" value="yes">
        {t("settlement.preview.go")}
      </button>
    </>
  );
}
